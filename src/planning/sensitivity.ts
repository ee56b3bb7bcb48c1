import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import { groupsOf, type JobGroup } from './doubt/group-table.ts';
import type { OrderTable } from './doubt/order-table.ts';
import { type OrderRun, orderRun, runOrder } from './doubt/run-order.ts';
import { orderTableOf } from './doubt.ts';

/** A readiness value that would change the first three lines of the list, all others as they are. */
export interface SensitiveValue {
  /** `zone0.bark` under embers, `win.single:flame` under flame. */
  readonly id: string;
  readonly readiness: number;
  readonly low: number;
  readonly high: number;
  /** Where in its range the first three change: nearest to the value as it is. */
  readonly changesAt: number;
  readonly towards: 'low' | 'high';
  /** The first three lines beyond that value, as keys. */
  readonly firstThree: readonly string[];
  /** Whether other lines come in, or the same three change places. */
  readonly change: 'lines' | 'order';
}

interface Trial {
  readonly table: OrderTable;
  readonly run: OrderRun;
  readonly groups: readonly JobGroup[];
  readonly readiness: Float64Array;
}

const firstPlaces = 3;

/** The first three lines for the readiness values as they stand; ties stay in the order of the keys. */
function firstThree({ table, run, groups, readiness }: Trial): string[] {
  runOrder(table, run, readiness);
  return groups
    .map(({ key, jobs }) => ({
      key,
      listed: jobs.some((job) => run.listed[job] === 1),
      share: jobs.reduce((sum, job) => sum + (run.listed[job] ? (run.share[job] ?? 0) : 0), 0),
    }))
    .filter((one) => one.listed)
    .sort((a, b) => (Math.abs(a.share - b.share) > 1e-12 ? b.share - a.share : a.key < b.key ? -1 : 1))
    .slice(0, firstPlaces)
    .map((one) => one.key);
}

const sameOrder = (a: readonly string[], b: readonly string[]) => a.join('\n') === b.join('\n');
const halvings = 12;

/** The nearest value on the way to the end of a range at which the first three change, by halving. */
function findChange(
  trial: Trial,
  position: number,
  from: number,
  to: number,
  usual: readonly string[],
): { at: number; first: string[] } {
  let [near, far] = [from, to];
  let first: string[] = [];
  for (let halving = 0; halving <= halvings; halving++) {
    const tried = halving === 0 ? far : (near + far) / 2;
    trial.readiness[position] = tried;
    const found = firstThree(trial);
    if (sameOrder(found, usual)) near = tried;
    else {
      far = tried;
      first = found;
    }
  }
  return { at: far, first };
}

/**
 * The readiness values that, moved alone within their range, would change the first three lines of the list: those that
 * change which lines they are first, then by how little has to change. A change back within a range is not looked for.
 */
export function sensitivityOf(checklist: Checklist, assessment: Assessment): SensitiveValue[] {
  const table = orderTableOf(checklist, assessment);
  const trial: Trial = {
    table,
    run: orderRun(table),
    groups: groupsOf(table.list),
    readiness: Float64Array.from(table.drawn, (one) => one.readiness),
  };
  const usual = firstThree(trial);
  const values = table.drawn.flatMap((one, position) =>
    (['low', 'high'] as const).flatMap((towards): SensitiveValue[] => {
      trial.readiness[position] = one[towards];
      const moved = !sameOrder(firstThree(trial), usual);
      const change = moved ? findChange(trial, position, one.readiness, one[towards], usual) : undefined;
      trial.readiness[position] = one.readiness;
      if (!change) return [];
      const others = change.first.some((key) => !usual.includes(key)) || change.first.length !== usual.length;
      return [
        {
          ...one,
          changesAt: change.at,
          towards,
          firstThree: change.first,
          change: others ? 'lines' : 'order',
        },
      ];
    }),
  );
  const far = (one: SensitiveValue) =>
    Math.abs(one.changesAt - one.readiness) / Math.max(1e-12, one.high - one.low);
  return values.sort((a, b) => (a.change === b.change ? far(a) - far(b) : a.change === 'lines' ? -1 : 1));
}

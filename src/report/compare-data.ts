import type { Comparison } from '../planning/compare.ts';
import { groupKeyOf } from '../planning/doubt/group-table.ts';
import type { WayIn } from '../ranking/ways-in.ts';
import type { Material } from './material.ts';
import type { Report } from './report.ts';

/** One state of a house: what its report is made from, and the report. */
export interface State {
  readonly material: Material;
  readonly report: Report;
}

interface ToldWay {
  readonly id: string;
  readonly text: string;
  /** Relative to the exposure of the first state. */
  readonly before: number;
  readonly after: number;
}

/** Two states of a house side by side, in words for one reader. */
export interface ComparisonTold {
  readonly version: 1;
  /** The exposure of the second state, as a part of that of the first; 1 where the first has none. */
  readonly left: number;
  readonly closed: readonly ToldWay[];
  readonly opened: readonly ToldWay[];
  readonly lessened: readonly ToldWay[];
  readonly grown: readonly ToldWay[];
  readonly unchanged: number;
  /** The list of the second state; `before` is the place in the first, nothing for a line that was not on it. */
  readonly list: readonly { readonly do: string; readonly now: number; readonly before: number | null }[];
  readonly gone: readonly { readonly do: string; readonly before: number }[];
}

function textOf({ report }: State, { id }: WayIn): string {
  return report.waysIn.find((one) => one.id === id)?.text ?? id;
}

function keyedJobs({ material, report }: State): Map<string, Report['jobs'][number]> {
  return new Map(
    material.assessment.groups.flatMap((group) => {
      const first = group.jobs[0]?.proposal;
      const job = report.jobs.find((one) => first && one.actions.includes(first.id));
      return first && job && job.rank > 0 ? [[groupKeyOf(first), job] as const] : [];
    }),
  );
}

/** Puts a comparison into words. */
export function tellComparison(first: State, second: State, comparison: Comparison): ComparisonTold {
  const { exposure, closed, opened, lessened, grown, unchanged } = comparison;
  const part = (weight: number) => (exposure.before > 0 ? weight / exposure.before : weight);
  const [was, is] = [keyedJobs(first), keyedJobs(second)];
  const changed = (list: Comparison['lessened']): ToldWay[] =>
    list.map(({ way, before, after }) => ({
      id: way.id,
      text: textOf(second, way),
      before: part(before),
      after: part(after),
    }));
  return {
    version: 1,
    left: exposure.before > 0 ? exposure.after / exposure.before : 1,
    closed: closed.map((way) => ({
      id: way.id,
      text: textOf(first, way),
      before: part(way.weight),
      after: 0,
    })),
    opened: opened.map((way) => ({
      id: way.id,
      text: textOf(second, way),
      before: 0,
      after: part(way.weight),
    })),
    lessened: changed(lessened),
    grown: changed(grown),
    unchanged: unchanged.length,
    list: [...is].map(([key, job]) => ({ do: job.do, now: job.rank, before: was.get(key)?.rank ?? null })),
    gone: [...was].flatMap(([key, job]) => (is.has(key) ? [] : [{ do: job.do, before: job.rank }])),
  };
}

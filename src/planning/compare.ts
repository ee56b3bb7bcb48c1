import type { Assessment } from '../assess/assess.ts';
import type { WayIn } from '../ranking/ways-in.ts';
import { groupKeyOf } from './doubt/group-table.ts';

/** A way in that is there before and after, with other weights. */
export interface ChangedWay {
  readonly way: WayIn;
  readonly before: number;
  readonly after: number;
}

/** A line of a list: the jobs that it holds, and where it stands. */
export interface ListLine {
  readonly key: string;
  readonly before: number | undefined;
  readonly after: number | undefined;
}

/** What became of a house between two assessments. */
export interface Comparison {
  readonly exposure: { readonly before: number; readonly after: number };
  readonly closed: readonly WayIn[];
  readonly opened: readonly WayIn[];
  readonly lessened: readonly ChangedWay[];
  readonly grown: readonly ChangedWay[];
  readonly unchanged: readonly WayIn[];
  /** By rank after, then those that are gone by rank before. */
  readonly lines: readonly ListLine[];
}

/** A way in that weighs the same but for rounding is unchanged. */
const same = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(a, b);

function lineKeys({ groups }: Assessment): Map<string, number> {
  return new Map(
    groups.flatMap((group) => {
      const first = group.jobs[0]?.proposal;
      return first ? [[groupKeyOf(first), group.rank] as const] : [];
    }),
  );
}

function linesOf(before: Assessment, after: Assessment): ListLine[] {
  const [first, second] = [lineKeys(before), lineKeys(after)];
  const now = [...second].map(([key, rank]) => ({ key, before: first.get(key), after: rank }));
  const gone = [...first]
    .filter(([key]) => !second.has(key))
    .map(([key, rank]) => ({ key, before: rank, after: undefined }));
  return [...now, ...gone];
}

/** Compares two assessments way in by way in; ways in are the same when kind, side and elements are. */
export function compareAssessments(before: Assessment, after: Assessment): Comparison {
  const first = new Map(before.waysIn.map((way) => [way.id, way]));
  const second = new Map(after.waysIn.map((way) => [way.id, way]));
  const both = after.waysIn.flatMap((way): ChangedWay[] => {
    const was = first.get(way.id);
    return was ? [{ way, before: was.weight, after: way.weight }] : [];
  });
  const moved = both.filter((one) => !same(one.before, one.after));
  const heaviest = (a: WayIn, b: WayIn) => b.weight - a.weight;
  const most = (a: ChangedWay, b: ChangedWay) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before);
  return {
    exposure: { before: before.exposure, after: after.exposure },
    closed: before.waysIn.filter((way) => !second.has(way.id)).sort(heaviest),
    opened: after.waysIn.filter((way) => !first.has(way.id)).sort(heaviest),
    lessened: moved.filter((one) => one.after < one.before).sort(most),
    grown: moved.filter((one) => one.after > one.before).sort(most),
    unchanged: both.filter((one) => same(one.before, one.after)).map((one) => one.way),
    lines: linesOf(before, after),
  };
}

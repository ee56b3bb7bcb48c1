import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import { groupKeyOf, groupsOf, type JobGroup } from './doubt/group-table.ts';
import { layOutOrder, type OrderTable } from './doubt/order-table.ts';
import {
  countRanks,
  type RankCounts,
  type RankRange,
  rangeOf,
  rankCounts,
  sortByShare,
} from './doubt/rank-counts.ts';
import { type OrderRun, orderRun, runOrder } from './doubt/run-order.ts';
import { seededRandom } from './seeded-random.ts';

/** How far one job, or one line of the list, can be trusted to stand where it stands. */
export interface Stability extends RankRange {
  /** Its rank in the list as it is; nothing for one that only some draws bring into the list. */
  readonly rank: number | undefined;
}

/** Two neighbours in the list of which neither is clearly first. */
export interface TossUp {
  /** Ranks of the two lines in the list. */
  readonly ranks: readonly [number, number];
  /** In which part of the draws the first of them came first. */
  readonly firstAhead: number;
}

/** What the list is worth when every readiness is drawn afresh from its range. */
export interface Doubt {
  readonly draws: number;
  readonly seed: number;
  /** By job id. */
  readonly jobs: ReadonlyMap<string, Stability>;
  /** By the key of the line: the joining word or action, and the lane. */
  readonly lines: ReadonlyMap<string, Stability>;
  readonly tossUps: readonly TossUp[];
  /** How many places from the top the list is firm: each of these lines was among the first so many in nine of ten draws. */
  readonly firm: number;
  /** In which part of the draws the first three lines were the same three, in any order. */
  readonly sameThree: number;
}

/** Two neighbours are a toss-up while the first is ahead in less than two of three draws. */
const clearlyAhead = 2 / 3;
/** A place is firm when it holds in this part of the draws. */
const firmly = 0.9;
/** Toss-ups are looked for among this many lines at the top. */
const among = 8;

/** The table from which a house's order can be worked out with other readiness values. */
export function orderTableOf(checklist: Checklist, assessment: Assessment): OrderTable {
  const { elements, chains, proposals } = assessment;
  return layOutOrder(proposals, elements, chains, checklist.flow.walk.tradeFloor);
}

/** Lines of the list with their sums for one run. */
interface Lines {
  readonly groups: readonly JobGroup[];
  readonly share: Float64Array;
  readonly alone: Float64Array;
  readonly listed: Uint8Array;
  readonly place: Int32Array;
  /** The line of each job. */
  readonly lineOf: Int32Array;
}

function linesOf(groups: readonly JobGroup[], ranks: ReadonlyMap<string, number>): Lines {
  const lineOf = new Int32Array(groups.reduce((sum, one) => sum + one.jobs.length, 0));
  groups.forEach(({ jobs }, line) => {
    for (const job of jobs) lineOf[job] = line;
  });
  return {
    groups,
    share: new Float64Array(groups.length),
    // Ties between lines go by their place in the list as it is.
    alone: new Float64Array(groups.length),
    listed: new Uint8Array(groups.length),
    place: Int32Array.from(groups, (one) => ranks.get(one.key) ?? groups.length + 1),
    lineOf,
  };
}

function sumUp({ lineOf, share, listed }: Lines, run: OrderRun): void {
  share.fill(0);
  listed.fill(0);
  for (let job = 0; job < lineOf.length; job++) {
    if (!run.listed[job]) continue;
    const line = lineOf[job] ?? 0;
    share[line] = (share[line] ?? 0) + (run.share[job] ?? 0);
    listed[line] = 1;
  }
}

function tossUpsOf(counts: RankCounts, ordered: readonly number[], draws: number): TossUp[] {
  return ordered.slice(0, among - 1).flatMap((one, at): TossUp[] => {
    const other = ordered[at + 1];
    if (other === undefined) return [];
    const firstAhead = (counts.ahead[one] ?? 0) / draws;
    return firstAhead < clearlyAhead ? [{ ranks: [at + 1, at + 2], firstAhead }] : [];
  });
}

/** In which part of the draws a line was among the first so many. */
function amongFirst({ count, counts }: RankCounts, line: number, first: number, draws: number): number {
  let seen = 0;
  for (let rank = 1; rank <= first; rank++) seen += counts[line * (count + 1) + rank] ?? 0;
  return seen / draws;
}

function firmPlaces(counts: RankCounts, ordered: readonly number[], draws: number): number {
  let firm = 0;
  for (let first = 1; first <= ordered.length; first++) {
    const holds = ordered.slice(0, first).every((line) => amongFirst(counts, line, first, draws) >= firmly);
    if (!holds) break;
    firm = first;
  }
  return firm;
}

/** Readiness values drawn afresh: one draw for a kind and attack, uniform in its range. */
export function drawReadiness(
  { drawn }: Pick<OrderTable, 'drawn'>,
  random: () => number,
  into: Float64Array,
): void {
  for (let at = 0; at < drawn.length; at++) {
    const one = drawn[at];
    if (one) into[at] = one.low + (one.high - one.low) * random();
  }
}

/**
 * Draws every readiness afresh many times and ranks the jobs again each time. The same seed gives the same result.
 * Lines of the list are ranked by the sum of their jobs' shares.
 */
export function doubtOf(checklist: Checklist, assessment: Assessment, seed: number, draws = 1000): Doubt {
  const table = orderTableOf(checklist, assessment);
  const run = orderRun(table);
  const rankOfJob = new Map(assessment.ranked.map((one) => [one.proposal.id, one.rank]));
  const rankOfLine = new Map(
    assessment.groups.flatMap((group) =>
      group.jobs.slice(0, 1).map((job) => [groupKeyOf(job.proposal), group.rank] as const),
    ),
  );
  const lines = linesOf(groupsOf(table.list), rankOfLine);
  const jobPlaces = Int32Array.from(table.list, (one) => rankOfJob.get(one.id) ?? table.list.length + 1);
  const byPlace = (places: Int32Array) =>
    [...places.keys()].sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0));
  const jobCounts = rankCounts(byPlace(jobPlaces));
  const lineCounts = rankCounts(byPlace(lines.place));
  const ordered = byPlace(lines.place).slice(0, assessment.groups.length);
  const random = seededRandom(seed);
  const readiness = new Float64Array(table.drawn.length);
  let sameThree = 0;
  for (let draw = 0; draw < draws; draw++) {
    drawReadiness(table, random, readiness);
    runOrder(table, run, readiness);
    sortByShare(jobCounts.order, run.share, run.alone, jobPlaces);
    countRanks(jobCounts, run.listed);
    sumUp(lines, run);
    sortByShare(lineCounts.order, lines.share, lines.alone, lines.place);
    countRanks(lineCounts, lines.listed);
    if (startsWithSame(lineCounts, lines, ordered)) sameThree++;
  }
  const stabilityOf = (counts: RankCounts, thing: number, rank: number | undefined): Stability => ({
    rank,
    ...rangeOf(counts, thing, draws),
  });
  return {
    draws,
    seed,
    jobs: new Map(table.list.map((one, job) => [one.id, stabilityOf(jobCounts, job, rankOfJob.get(one.id))])),
    lines: new Map(
      lines.groups.map((one, line) => [one.key, stabilityOf(lineCounts, line, rankOfLine.get(one.key))]),
    ),
    tossUps: tossUpsOf(lineCounts, ordered, draws),
    firm: firmPlaces(lineCounts, ordered, draws),
    sameThree: sameThree / draws,
  };
}

/** Whether the first three listed lines of a draw are those of the list as it is, in any order. */
function startsWithSame({ order }: RankCounts, { listed }: Lines, ordered: readonly number[]): boolean {
  let seen = 0;
  for (let at = 0; at < order.length && seen < Math.min(3, ordered.length); at++) {
    const line = order[at] ?? 0;
    if (!listed[line]) continue;
    seen++;
    const here = ordered[0] === line || ordered[1] === line || ordered[2] === line;
    if (!here) return false;
  }
  return true;
}

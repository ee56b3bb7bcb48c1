import { applyJob, type EffectState, effectOf } from '../choosing/effects.ts';
import type { OrderTable } from './order-table.ts';

/** Jobs that may be done now, as a heap with the best on top. */
interface ReadyHeap {
  readonly jobs: Int32Array;
  length: number;
}

/** What came out for one set of readiness values; overwritten by the next. */
export interface OrderRun {
  readonly state: EffectState;
  readonly share: Float64Array;
  readonly alone: Float64Array;
  /** 1 where the job stands in the list. */
  readonly listed: Uint8Array;
  readonly most: Float64Array;
  readonly fresh: Int32Array;
  readonly waiting: Int32Array;
  readonly done: Uint8Array;
  readonly ready: ReadyHeap;
}

/** Room for the runs of one table. */
export function orderRun({ effects, list }: OrderTable): OrderRun {
  return {
    state: { slotLeft: new Float64Array(effects.slotCount), weights: new Float64Array(effects.wayCount) },
    share: new Float64Array(list.length),
    alone: new Float64Array(list.length),
    listed: new Uint8Array(list.length),
    most: new Float64Array(list.length),
    fresh: new Int32Array(list.length),
    waiting: new Int32Array(list.length),
    done: new Uint8Array(list.length),
    ready: { jobs: new Int32Array(list.length), length: 0 },
  };
}

const same = 1e-12;

function start(table: OrderTable, run: OrderRun, readiness: Float64Array): void {
  const { effects, wayStart, wayDrawn, list } = table;
  run.state.slotLeft.fill(1);
  for (let way = 0; way < effects.wayCount; way++) {
    let weight = 1;
    const end = wayStart[way + 1] ?? 0;
    for (let at = wayStart[way] ?? 0; at < end; at++) weight *= readiness[wayDrawn[at] ?? 0] ?? 1;
    run.state.weights[way] = weight;
  }
  for (let job = 0; job < list.length; job++) {
    const alone = effectOf(effects, run.state, job);
    run.alone[job] = alone;
    run.most[job] = alone;
  }
  run.share.fill(0);
  run.fresh.fill(0);
  run.done.fill(0);
  run.waiting.set(table.waitsFor);
  run.listed.fill(0);
  run.ready.length = 0;
}

/** More taken off comes first; ties by what a job takes off alone, then by id. */
function isAhead({ idPlace }: OrderTable, { most, alone }: OrderRun, one: number, other: number): boolean {
  const more = (most[one] ?? 0) - (most[other] ?? 0);
  if (more > same || more < -same) return more > 0;
  const aloneMore = (alone[one] ?? 0) - (alone[other] ?? 0);
  if (aloneMore > same || aloneMore < -same) return aloneMore > 0;
  return (idPlace[one] ?? 0) < (idPlace[other] ?? 0);
}

function putReady(table: OrderTable, run: OrderRun, job: number): void {
  const { ready } = run;
  let at = ready.length++;
  while (at > 0) {
    const above = (at - 1) >> 1;
    const other = ready.jobs[above] ?? 0;
    if (!isAhead(table, run, job, other)) break;
    ready.jobs[at] = other;
    at = above;
  }
  ready.jobs[at] = job;
}

/** Lets the job on top sink to its place. */
function sinkTop(table: OrderTable, run: OrderRun, job: number): void {
  const { ready } = run;
  let at = 0;
  for (;;) {
    let below = 2 * at + 1;
    if (below >= ready.length) break;
    if (below + 1 < ready.length && isAhead(table, run, ready.jobs[below + 1] ?? 0, ready.jobs[below] ?? 0))
      below++;
    const other = ready.jobs[below] ?? 0;
    if (!isAhead(table, run, other, job)) break;
    ready.jobs[at] = other;
    at = below;
  }
  ready.jobs[at] = job;
}

function takeTop(table: OrderTable, run: OrderRun): void {
  const last = run.ready.jobs[--run.ready.length] ?? 0;
  if (run.ready.length > 0) sinkTop(table, run, last);
}

/** The ready job that takes most off; what a job takes off only falls, so that an old value is a ceiling. */
function bestReady(table: OrderTable, run: OrderRun, turn: number): number {
  const { most, fresh, ready } = run;
  while (ready.length > 0) {
    const best = ready.jobs[0] ?? 0;
    if (fresh[best] === turn || (most[best] ?? 0) <= 0) {
      takeTop(table, run);
      return best;
    }
    most[best] = effectOf(table.effects, run.state, best);
    fresh[best] = turn;
    sinkTop(table, run, best);
  }
  return -1;
}

function isWorth(
  { floored, tradeFloor, jobWayStart, jobWay }: OrderTable,
  { state }: OrderRun,
  job: number,
): boolean {
  if (!floored[job]) return true;
  const end = jobWayStart[job + 1] ?? 0;
  for (let at = jobWayStart[job] ?? 0; at < end; at++) {
    if ((state.weights[jobWay[at] ?? 0] ?? 0) >= tradeFloor) return true;
  }
  return false;
}

function take(table: OrderTable, run: OrderRun, job: number, lane: number): boolean {
  run.done[job] = 1;
  for (const other of table.next[job] ?? []) {
    const left = (run.waiting[other] ?? 1) - 1;
    run.waiting[other] = left;
    if (left === 0 && !run.done[other] && (table.lane[other] ?? 0) <= lane) putReady(table, run, other);
  }
  if (!isWorth(table, run, job)) return false;
  const share = applyJob(table.effects, run.state, job);
  run.share[job] = share;
  run.listed[job] = share > same || (run.alone[job] ?? 0) > same || table.always[job] ? 1 : 0;
  return share > 0;
}

/** Works the order of doing out for these readiness values, by kind: the same result as `orderOfDoing` and `rank`. */
export function runOrder(table: OrderTable, run: OrderRun, readiness: Float64Array): void {
  start(table, run, readiness);
  let turn = 0;
  for (let lane = 0; lane < 3; lane++) {
    for (let job = 0; job < table.list.length; job++) {
      if (table.lane[job] === lane && (run.waiting[job] ?? 0) === 0) putReady(table, run, job);
    }
    for (let job = bestReady(table, run, turn); job >= 0; job = bestReady(table, run, turn)) {
      if (take(table, run, job, lane)) turn++;
    }
  }
  takeCircling(table, run);
}

/** Jobs that wait for each other in a circle come last. */
function takeCircling(table: OrderTable, run: OrderRun): void {
  if (run.done.indexOf(0) < 0) return;
  const circling = [...run.done.keys()].filter((job) => !run.done[job]);
  for (const job of circling) run.most[job] = 0;
  circling.sort((a, b) => (isAhead(table, run, a, b) ? -1 : 1));
  for (const job of circling) take(table, run, job, -1);
}

import type { Proposal } from '../../ranking/actions.ts';
import type { Chains } from '../../ranking/exposure.ts';
import { jobsOf } from '../../ranking/order.ts';
import type { ReadyElement } from '../../ranking/readiness.ts';
import { applyJob, type EffectState, type Effects, effectOf, layOutEffects } from '../choosing/effects.ts';

/** A readiness that is drawn or varied as one: a kind of element under one attack. */
export interface Drawn {
  /** `zone0.bark` under embers, `win.single:flame` under flame. */
  readonly id: string;
  readonly readiness: number;
  readonly low: number;
  readonly high: number;
}

/** Everything needed to work the order of doing out again and again from other readiness values. */
export interface OrderTable {
  readonly list: readonly Proposal[];
  readonly drawn: readonly Drawn[];
  readonly effects: Effects;
  /** The kinds in way w: wayStart[w] to wayStart[w + 1]. */
  readonly wayStart: Int32Array;
  readonly wayDrawn: Int32Array;
  readonly lane: Int8Array;
  /** How many jobs each job waits for, and which jobs wait for it. */
  readonly waitsFor: Int32Array;
  readonly next: readonly (readonly number[])[];
  /** Trade jobs that nobody demands are done only while a way in is at least this heavy. */
  readonly floored: Uint8Array;
  readonly tradeFloor: number;
  /** Ways in that job j lessens: jobWayStart[j] to jobWayStart[j + 1]. */
  readonly jobWayStart: Int32Array;
  readonly jobWay: Int32Array;
  /** Place of each job when sorted by id, for ties. */
  readonly idPlace: Int32Array;
  readonly always: Uint8Array;
}

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

const drawnId = (element: ReadyElement) =>
  element.attack === 'flame' ? `${element.kind}:flame` : element.kind;

function drawnOf(elements: readonly ReadyElement[]): { drawn: Drawn[]; position: Map<string, number> } {
  const position = new Map<string, number>();
  const drawn: Drawn[] = [];
  for (const element of elements) {
    const id = drawnId(element);
    if (position.has(id)) continue;
    position.set(id, drawn.length);
    drawn.push({ id, readiness: element.readiness, low: element.low, high: element.high });
  }
  return { drawn, position };
}

function waysOfJobs(list: readonly Proposal[], { ways }: Chains): number[][] {
  return list.map((one) =>
    ways.flatMap((way, position) => (way.some((element) => one.treats.has(element)) ? [position] : [])),
  );
}

function starts(lists: readonly { readonly length: number }[]): Int32Array {
  const start = new Int32Array(lists.length + 1);
  lists.forEach((one, position) => {
    start[position + 1] = (start[position] ?? 0) + one.length;
  });
  return start;
}

/** Lays the jobs and ways in of a house out as flat arrays. */
export function layOutOrder(
  list: readonly Proposal[],
  elements: readonly ReadyElement[],
  chains: Chains,
  tradeFloor: number,
): OrderTable {
  const { drawn, position } = drawnOf(elements);
  const jobs = jobsOf(list);
  const jobWays = waysOfJobs(list, chains);
  const places = new Map(
    [...list]
      .map((one) => one.id)
      .sort((a, b) => (a < b ? -1 : 1))
      .map((id, place) => [id, place]),
  );
  const positions = new Map(list.map((one, place) => [one.id, place]));
  const required = list.map((one) => [...new Set(one.requires)].flatMap((id) => positions.get(id) ?? []));
  const drawnOfElement = elements.map((element) => position.get(drawnId(element)) ?? 0);
  return {
    list,
    drawn,
    effects: layOutEffects(chains, jobs),
    wayStart: starts(chains.ways),
    wayDrawn: Int32Array.from(
      chains.ways.flatMap((way) => way.map((element) => drawnOfElement[element] ?? 0)),
    ),
    lane: Int8Array.from(jobs, (job) => job.lane),
    waitsFor: Int32Array.from(required, (ids) => ids.length),
    next: list.map((_, place) => required.flatMap((ids, other) => (ids.includes(place) ? [other] : []))),
    floored: Uint8Array.from(list, (one) => (one.lane === 'trade' && !one.demanded ? 1 : 0)),
    tradeFloor,
    jobWayStart: starts(jobWays),
    jobWay: Int32Array.from(jobWays.flat()),
    idPlace: Int32Array.from(list, (one) => places.get(one.id) ?? 0),
    always: Uint8Array.from(list, (one) => (one.demanded || one.treats.size === 0 ? 1 : 0)),
  };
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

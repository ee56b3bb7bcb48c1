import type { Proposal } from '../../ranking/actions.ts';
import type { Chains } from '../../ranking/exposure.ts';
import { jobsOf } from '../../ranking/order.ts';
import type { ReadyElement } from '../../ranking/readiness.ts';
import { type Effects, layOutEffects } from '../choosing/effects.ts';

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
    floored: Uint8Array.from(list, (one) => (one.costly && !one.demanded ? 1 : 0)),
    tradeFloor,
    jobWayStart: starts(jobWays),
    jobWay: Int32Array.from(jobWays.flat()),
    idPlace: Int32Array.from(list, (one) => places.get(one.id) ?? 0),
    always: Uint8Array.from(list, (one) => (one.demanded || one.treats.size === 0 ? 1 : 0)),
  };
}

import type { ChoiceProblem, Spend } from './choice.ts';
import { applyJob, bundleFactor, copyState, type EffectState, type Effects } from './effects.ts';

/** What the bound needs to know of a part of the search. */
export interface Part {
  readonly state: EffectState;
  /** 0 open, 1 chosen, 2 left out. */
  readonly fixed: Uint8Array;
  readonly left: Spend;
  /** Shared costs that are paid already. */
  readonly paid: Uint8Array;
}

/** Multipliers and scratch arrays, kept between bounds of neighbouring parts. */
export interface BoundMemory {
  /** For each way in: which part of its weight is counted job by job; the rest is counted once, whole. */
  readonly split: Float64Array;
  /** How much money weighs against hours in the one limit that stands for both. */
  moneyPart: number;
  readonly bestSplit: Float64Array;
  readonly caps: Float64Array;
  readonly demand: Float64Array;
  readonly values: Float64Array;
  readonly sizes: Float64Array;
  readonly taken: Float64Array;
  readonly ratio: Float64Array;
  readonly all: EffectState;
  /** For each bundle, which part of its ways in the job takes off now. */
  readonly lost: Float64Array;
  order: number[];
}

/** Memory for one search. With one limit only, that one is the joined limit from the start. */
export function boundMemory({ effects, jobs, limit }: ChoiceProblem): BoundMemory {
  const floats = (length: number) => new Float64Array(length);
  return {
    split: floats(effects.wayCount).fill(1),
    bestSplit: floats(effects.wayCount).fill(1),
    moneyPart:
      limit.hours === Number.POSITIVE_INFINITY ? 1 : limit.money === Number.POSITIVE_INFINITY ? 0 : 0.5,
    caps: floats(effects.wayCount),
    demand: floats(effects.wayCount),
    values: floats(jobs.length),
    sizes: floats(jobs.length),
    taken: floats(jobs.length),
    ratio: floats(jobs.length),
    all: { slotLeft: floats(effects.slotCount), weights: floats(effects.wayCount) },
    lost: floats(effects.bundleWayStart.length - 1),
    order: [],
  };
}

/** The most that each way in can still lose: all open jobs done. */
export function fillCaps(
  { effects }: ChoiceProblem,
  part: Part,
  memory: BoundMemory,
  open: readonly number[],
): void {
  copyState(part.state, memory.all);
  for (const job of open) applyJob(effects, memory.all, job);
  for (let way = 0; way < effects.wayCount; way++) {
    memory.caps[way] = (part.state.weights[way] ?? 0) - (memory.all.weights[way] ?? 0);
  }
}

/** Works out which part of each bundle the open jobs take off now. */
export function fillLost(
  { effects }: ChoiceProblem,
  part: Part,
  memory: BoundMemory,
  open: readonly number[],
): void {
  const { bundleStart } = effects;
  for (const job of open) {
    const last = bundleStart[job + 1] ?? 0;
    for (let bundle = bundleStart[job] ?? 0; bundle < last; bundle++)
      memory.lost[bundle] = 1 - bundleFactor(effects, part.state, bundle);
  }
}

/** What a job takes off, each way in at its multiplier. */
export function worthAtSplit(
  effects: Effects,
  weights: Float64Array,
  { split, lost }: BoundMemory,
  job: number,
): number {
  const { bundleStart, bundleWayStart, bundleWay } = effects;
  let value = 0;
  const last = bundleStart[job + 1] ?? 0;
  for (let bundle = bundleStart[job] ?? 0; bundle < last; bundle++) {
    const part = lost[bundle] ?? 0;
    if (part === 0) continue;
    let weight = 0;
    const end = bundleWayStart[bundle + 1] ?? 0;
    for (let at = bundleWayStart[bundle] ?? 0; at < end; at++) {
      const way = bundleWay[at] ?? 0;
      weight += (weights[way] ?? 0) * (split[way] ?? 0);
    }
    value += weight * part;
  }
  return value;
}

/** Adds to each way in what a job takes off it, by how far the relaxed choice takes the job. */
export function addDemand(
  effects: Effects,
  weights: Float64Array,
  { demand, lost }: BoundMemory,
  job: number,
  taken: number,
): void {
  const { bundleStart, bundleWayStart, bundleWay } = effects;
  const last = bundleStart[job + 1] ?? 0;
  for (let bundle = bundleStart[job] ?? 0; bundle < last; bundle++) {
    const part = taken * (lost[bundle] ?? 0);
    if (part === 0) continue;
    const end = bundleWayStart[bundle + 1] ?? 0;
    for (let at = bundleWayStart[bundle] ?? 0; at < end; at++) {
      const way = bundleWay[at] ?? 0;
      demand[way] = (demand[way] ?? 0) + part * (weights[way] ?? 0);
    }
  }
}

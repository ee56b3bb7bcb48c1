import type { Chains, Job } from '../../ranking/exposure.ts';

/**
 * What jobs take off ways in, as flat arrays. Instead of elements it keeps one slot for each element and group of jobs
 * of which one is enough: a way in weighs its first weight times what is left in the slots of its elements.
 */
export interface Effects {
  readonly jobCount: number;
  readonly wayCount: number;
  readonly slotCount: number;
  /** Entries of job j: entryStart[j] to entryStart[j + 1]; each fills a slot down to a residual. */
  readonly entryStart: Int32Array;
  readonly entrySlot: Int32Array;
  readonly entryResidual: Float64Array;
  /** Bundles of job j: bundleStart[j] to bundleStart[j + 1]; a bundle is ways in that the same entries reach. */
  readonly bundleStart: Int32Array;
  readonly bundleEntryStart: Int32Array;
  readonly bundleEntry: Int32Array;
  readonly bundleWayStart: Int32Array;
  readonly bundleWay: Int32Array;
}

/** How far the work is: what is left in each slot, and what each way in still weighs. */
export interface EffectState {
  readonly slotLeft: Float64Array;
  readonly weights: Float64Array;
}

function starts(lists: readonly { readonly length: number }[]): Int32Array {
  const start = new Int32Array(lists.length + 1);
  lists.forEach((list, position) => {
    start[position + 1] = (start[position] ?? 0) + list.length;
  });
  return start;
}

interface Bundle {
  readonly entries: readonly number[];
  readonly ways: number[];
}

/** The ways in that a job reaches, those together that the same of its entries reach. */
function bundlesOf(entryOf: ReadonlyMap<number, number>, ways: Chains['ways']): Bundle[] {
  const bundles = new Map<string, Bundle>();
  ways.forEach((way, position) => {
    const entries = way.flatMap((element) => entryOf.get(element) ?? []).sort((a, b) => a - b);
    if (entries.length === 0) return;
    const key = entries.join();
    const bundle = bundles.get(key) ?? { entries, ways: [] };
    bundle.ways.push(position);
    bundles.set(key, bundle);
  });
  return [...bundles.values()];
}

/** Lays the jobs out over the ways in. */
export function layOutEffects({ ways }: Chains, jobs: readonly Job[]): Effects {
  const slots = new Map<string, number>();
  const entrySlot: number[] = [];
  const entryResidual: number[] = [];
  const entryStart = new Int32Array(jobs.length + 1);
  const perJob = jobs.map((job, position) => {
    const entryOf = new Map<number, number>();
    for (const [element, residual] of job.treats) {
      const key = `${element}/${job.insteadOf ?? job.id}`;
      const slot = slots.get(key) ?? slots.size;
      slots.set(key, slot);
      entryOf.set(element, entrySlot.length);
      entrySlot.push(slot);
      entryResidual.push(residual);
    }
    entryStart[position + 1] = entrySlot.length;
    return bundlesOf(entryOf, ways);
  });
  const all = perJob.flat();
  return {
    jobCount: jobs.length,
    wayCount: ways.length,
    slotCount: slots.size,
    entryStart,
    entrySlot: Int32Array.from(entrySlot),
    entryResidual: Float64Array.from(entryResidual),
    bundleStart: starts(perJob),
    bundleEntryStart: starts(all.map((one) => one.entries)),
    bundleEntry: Int32Array.from(all.flatMap((one) => one.entries)),
    bundleWayStart: starts(all.map((one) => one.ways)),
    bundleWay: Int32Array.from(all.flatMap((one) => one.ways)),
  };
}

/** Nothing done, with these weights of the ways in. */
export function stateAtStart(effects: Effects, weights: Float64Array): EffectState {
  return { slotLeft: new Float64Array(effects.slotCount).fill(1), weights: Float64Array.from(weights) };
}

/** By which factor a bundle's ways in shrink when its job is done now. */
export function bundleFactor(effects: Effects, { slotLeft }: EffectState, bundle: number): number {
  const { bundleEntryStart, bundleEntry, entrySlot, entryResidual } = effects;
  let factor = 1;
  const end = bundleEntryStart[bundle + 1] ?? 0;
  for (let at = bundleEntryStart[bundle] ?? 0; at < end; at++) {
    const entry = bundleEntry[at] ?? 0;
    const left = slotLeft[entrySlot[entry] ?? 0] ?? 1;
    const residual = entryResidual[entry] ?? 1;
    if (residual < left) factor *= residual / left;
  }
  return factor;
}

/** What a job would take off now. */
export function effectOf(effects: Effects, state: EffectState, job: number): number {
  const { bundleStart, bundleWayStart, bundleWay } = effects;
  const { weights } = state;
  let gain = 0;
  const last = bundleStart[job + 1] ?? 0;
  for (let bundle = bundleStart[job] ?? 0; bundle < last; bundle++) {
    const factor = bundleFactor(effects, state, bundle);
    if (factor === 1) continue;
    let weight = 0;
    const end = bundleWayStart[bundle + 1] ?? 0;
    for (let at = bundleWayStart[bundle] ?? 0; at < end; at++) weight += weights[bundleWay[at] ?? 0] ?? 0;
    gain += weight * (1 - factor);
  }
  return gain;
}

/** Does a job: changes the state, returns what it took off. */
export function applyJob(effects: Effects, state: EffectState, job: number): number {
  const { entryStart, entrySlot, entryResidual, bundleStart, bundleWayStart, bundleWay } = effects;
  const { slotLeft, weights } = state;
  let gain = 0;
  const last = bundleStart[job + 1] ?? 0;
  for (let bundle = bundleStart[job] ?? 0; bundle < last; bundle++) {
    const factor = bundleFactor(effects, state, bundle);
    if (factor === 1) continue;
    const end = bundleWayStart[bundle + 1] ?? 0;
    for (let at = bundleWayStart[bundle] ?? 0; at < end; at++) {
      const way = bundleWay[at] ?? 0;
      const before = weights[way] ?? 0;
      weights[way] = before * factor;
      gain += before - before * factor;
    }
  }
  const end = entryStart[job + 1] ?? 0;
  for (let entry = entryStart[job] ?? 0; entry < end; entry++) {
    const slot = entrySlot[entry] ?? 0;
    slotLeft[slot] = Math.min(slotLeft[slot] ?? 1, entryResidual[entry] ?? 1);
  }
  return gain;
}

/** Copies one state over another. */
export function copyState(from: EffectState, to: EffectState): void {
  to.slotLeft.set(from.slotLeft);
  to.weights.set(from.weights);
}

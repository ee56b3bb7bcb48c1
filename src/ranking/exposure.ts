/** Ways in as plain numbers: for each the positions of its elements. */
export interface Chains {
  readonly readiness: readonly number[];
  readonly ways: readonly (readonly number[])[];
}

/** A job as plain numbers. */
export interface Job {
  readonly id: string;
  readonly lane: number;
  readonly treats: ReadonlyMap<number, number>;
  readonly insteadOf: string | undefined;
}

/** Which jobs are done, and what is left of every element and way in; changed only through `doJob`. */
export interface Progress {
  /** element -> instead-of group (or the job's own id) -> lowest residual */
  readonly residuals: Map<number, Map<string, number>>;
  readonly left: Float64Array;
  readonly weights: Float64Array;
  exposure: number;
}

/** element -> the ways in that hold it */
export function waysByElement(chains: Chains): readonly (readonly number[])[] {
  const by: number[][] = chains.readiness.map(() => []);
  chains.ways.forEach((way, position) => {
    for (const element of way) by[element]?.push(position);
  });
  return by;
}

/** Nothing done yet: every way in weighs the product of its elements' readiness, exposure is their sum. */
export function nothingDone(chains: Chains): Progress {
  const left = Float64Array.from(chains.readiness);
  const weights = Float64Array.from(chains.ways, (way) =>
    way.reduce((product, element) => product * (left[element] ?? 1), 1),
  );
  return { residuals: new Map(), left, weights, exposure: weights.reduce((sum, weight) => sum + weight, 0) };
}

/** The same state once more, to be changed by itself. */
export function copyProgress({ residuals, left, weights, exposure }: Progress): Progress {
  const copied = [...residuals].map(([element, groups]) => [element, new Map(groups)] as const);
  return { residuals: new Map(copied), left: left.slice(), weights: weights.slice(), exposure };
}

/** What is left of an element's readiness, as a factor, once a job is done on top of what is done. */
function factorWith(progress: Progress, element: number, job: Job, residual: number): number {
  const groups = progress.residuals.get(element);
  const group = job.insteadOf ?? job.id;
  let factor = Math.min(groups?.get(group) ?? 1, residual);
  if (groups) for (const [name, other] of groups) if (name !== group) factor *= other;
  return factor;
}

/** The new left-over readiness of each element that a job treats. */
function leftAfter(chains: Chains, progress: Progress, job: Job): Map<number, number> {
  const after = new Map<number, number>();
  for (const [element, residual] of job.treats) {
    after.set(element, (chains.readiness[element] ?? 0) * factorWith(progress, element, job, residual));
  }
  return after;
}

/** What a job takes off the exposure that is left. */
export function gainOf(
  chains: Chains,
  by: readonly (readonly number[])[],
  progress: Progress,
  job: Job,
): number {
  const after = leftAfter(chains, progress, job);
  const touched = new Set<number>();
  for (const element of after.keys()) for (const way of by[element] ?? []) touched.add(way);
  let gain = 0;
  for (const way of touched) {
    let weight = 1;
    for (const element of chains.ways[way] ?? []) weight *= after.get(element) ?? progress.left[element] ?? 1;
    gain += (progress.weights[way] ?? 0) - weight;
  }
  return Math.max(0, gain);
}

/** Does a job: returns what it took off. */
export function doJob(
  chains: Chains,
  by: readonly (readonly number[])[],
  progress: Progress,
  job: Job,
): number {
  const after = leftAfter(chains, progress, job);
  const group = job.insteadOf ?? job.id;
  const touched = new Set<number>();
  for (const [element, residual] of job.treats) {
    const groups = progress.residuals.get(element) ?? new Map<string, number>();
    groups.set(group, Math.min(groups.get(group) ?? 1, residual));
    progress.residuals.set(element, groups);
    progress.left[element] = after.get(element) ?? 0;
    for (const way of by[element] ?? []) touched.add(way);
  }
  let gain = 0;
  for (const way of touched) {
    let weight = 1;
    for (const element of chains.ways[way] ?? []) weight *= progress.left[element] ?? 1;
    gain += (progress.weights[way] ?? 0) - weight;
    progress.weights[way] = weight;
  }
  progress.exposure -= gain;
  return Math.max(0, gain);
}

import type { Chains, Job } from '../../ranking/exposure.ts';

/** Ways in that the same jobs lessen alike, joined into one, with what they weigh together. */
export interface ReducedChains {
  readonly ways: readonly (readonly number[])[];
  readonly weights: Float64Array;
  readonly jobs: readonly Job[];
}

/** For each element the jobs that treat it, as one text: elements with the same text are always left alike. */
function classTexts(jobs: readonly Job[], count: number): string[] {
  const texts = new Array<string>(count).fill('');
  jobs.forEach((job, position) => {
    for (const [element, residual] of job.treats) texts[element] += `${position}:${residual};`;
  });
  return texts;
}

/**
 * Joins ways in that no set of jobs can tell apart; what a set of jobs takes off stays the same. Ways in that no job
 * reaches are left out.
 */
export function reduceChains(chains: Chains, jobs: readonly Job[]): ReducedChains {
  const texts = classTexts(jobs, chains.readiness.length);
  const classes = new Map<string, number>();
  const classOf = texts.map((text) => {
    if (text === '') return -1;
    const known = classes.get(text) ?? classes.size;
    classes.set(text, known);
    return known;
  });
  const joined = new Map<string, { way: readonly number[]; weight: number }>();
  for (const way of chains.ways) {
    const treated = way.map((element) => classOf[element] ?? -1).filter((one) => one >= 0);
    if (treated.length === 0) continue;
    treated.sort((a, b) => a - b);
    const weight = way.reduce((product, element) => product * (chains.readiness[element] ?? 1), 1);
    const before = joined.get(treated.join());
    joined.set(treated.join(), { way: treated, weight: weight + (before?.weight ?? 0) });
  }
  const list = [...joined.values()];
  return {
    ways: list.map((one) => one.way),
    weights: Float64Array.from(list, (one) => one.weight),
    jobs: jobs.map((job) => ({
      ...job,
      treats: new Map([...job.treats].map(([element, residual]) => [classOf[element] ?? 0, residual])),
    })),
  };
}

import type { Effects } from './effects.ts';

/** Money and hours. */
export interface Spend {
  readonly money: number;
  readonly hours: number;
}

/** What a job of the choice asks for, besides what it takes off. */
export interface ChoiceJob extends Spend {
  /** Positions in the list of shared costs: paid once, however many of the chosen jobs use them. */
  readonly shared: readonly number[];
  /** Positions of the jobs that have to be chosen with it. */
  readonly requires: readonly number[];
}

/** Which jobs to choose within money and hours, so that they take off most. */
export interface ChoiceProblem {
  readonly effects: Effects;
  readonly weights: Float64Array;
  readonly jobs: readonly ChoiceJob[];
  readonly shared: readonly Spend[];
  /** `Infinity` where there is no limit. */
  readonly limit: Spend;
}

/** What was chosen. */
export interface Choice {
  /** Positions of jobs, ascending. */
  readonly chosen: readonly number[];
  readonly gain: number;
  /** No choice within the limit takes off more than this. */
  readonly bound: number;
  /** Proven: no other choice takes off more. */
  readonly exact: boolean;
  /** How many parts of the search were looked at. */
  readonly looks: number;
}

/** Each job with everything that it requires, directly or by others. */
export function closures(jobs: readonly ChoiceJob[]): readonly (readonly number[])[] {
  return jobs.map((_, position) => {
    const seen = new Set<number>();
    const add = (one: number): void => {
      if (seen.has(one)) return;
      seen.add(one);
      for (const next of jobs[one]?.requires ?? []) add(next);
    };
    add(position);
    return [...seen].sort((a, b) => a - b);
  });
}

/** Each job with everything that cannot be chosen without it. */
export function dependents(closed: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const lists: number[][] = closed.map(() => []);
  closed.forEach((list, position) => {
    for (const one of list) lists[one]?.push(position);
  });
  return lists;
}

/** What a set of jobs costs together, shared costs counted once. */
export function spendOf(
  { jobs, shared }: Pick<ChoiceProblem, 'jobs' | 'shared'>,
  chosen: Iterable<number>,
): Spend {
  let money = 0;
  let hours = 0;
  const paid = new Set<number>();
  for (const position of chosen) {
    const job = jobs[position];
    money += job?.money ?? 0;
    hours += job?.hours ?? 0;
    for (const one of job?.shared ?? []) paid.add(one);
  }
  for (const one of paid) {
    money += shared[one]?.money ?? 0;
    hours += shared[one]?.hours ?? 0;
  }
  return { money, hours };
}

/** Sums of decimal prices are not exact in binary: a plan that costs the limit to the cent fits. */
const rounding = 1e-9;

/** Whether a spend keeps within a limit. */
export function fits(spend: Spend, limit: Spend): boolean {
  return (
    spend.money <= limit.money + rounding * Math.max(1, spend.money) &&
    spend.hours <= limit.hours + rounding * Math.max(1, spend.hours)
  );
}

import { type ChoiceProblem, fits, type Spend } from './choice.ts';
import { applyJob, effectOf } from './effects.ts';
import type { Part } from './relaxed.ts';

/** A part of the search: some jobs are chosen, some left out, the rest is open. */
export interface Branch extends Part {
  left: Spend;
  gain: number;
}

/** What a branch needs to know of the problem, worked out once. */
export interface Ground {
  readonly problem: ChoiceProblem;
  /** Each job with all that it requires. */
  readonly closed: readonly (readonly number[])[];
  /** Each job with all that requires it. */
  readonly needing: readonly (readonly number[])[];
}

export const open = 0;
export const chosen = 1;
export const out = 2;

/** A branch of its own, to be changed apart. */
export function copyBranch({ state, fixed, paid, left, gain }: Branch): Branch {
  const copy = { slotLeft: Float64Array.from(state.slotLeft), weights: Float64Array.from(state.weights) };
  return { state: copy, fixed: Uint8Array.from(fixed), paid: Uint8Array.from(paid), left, gain };
}

/** The jobs chosen in a branch, ascending. */
export const chosenIn = (branch: Branch): number[] =>
  [...branch.fixed.keys()].filter((job) => branch.fixed[job] === chosen);

/** What choosing a job and all it requires costs on top of what is chosen; nothing when one of them is left out. */
export function costInBranch({ problem, closed }: Ground, branch: Branch, job: number): Spend | undefined {
  let money = 0;
  let hours = 0;
  let paid: Set<number> | undefined;
  for (const one of closed[job] ?? []) {
    if (branch.fixed[one] === chosen) continue;
    if (branch.fixed[one] === out) return undefined;
    const item = problem.jobs[one];
    money += item?.money ?? 0;
    hours += item?.hours ?? 0;
    for (const cost of item?.shared ?? []) {
      if (branch.paid[cost] || paid?.has(cost)) continue;
      paid ??= new Set();
      paid.add(cost);
      money += problem.shared[cost]?.money ?? 0;
      hours += problem.shared[cost]?.hours ?? 0;
    }
  }
  return { money, hours };
}

/** Chooses a job with all it requires; false, and nothing changed, where that does not fit. */
export function include(ground: Ground, branch: Branch, job: number): boolean {
  const { problem, closed } = ground;
  const cost = costInBranch(ground, branch, job);
  if (!cost || !fits(cost, branch.left)) return false;
  for (const one of closed[job] ?? []) {
    if (branch.fixed[one] === chosen) continue;
    branch.fixed[one] = chosen;
    for (const shared of problem.jobs[one]?.shared ?? []) branch.paid[shared] = 1;
    branch.gain += applyJob(problem.effects, branch.state, one);
  }
  branch.left = { money: branch.left.money - cost.money, hours: branch.left.hours - cost.hours };
  return true;
}

/** Leaves a job out, and all that cannot be without it; false where one of those is chosen already. */
export function exclude({ needing }: Ground, branch: Branch, job: number): boolean {
  for (const one of needing[job] ?? []) if (branch.fixed[one] === chosen) return false;
  for (const one of needing[job] ?? []) branch.fixed[one] = out;
  return true;
}

/** The open jobs that fit and still take something off; those that do not fit any more are left out for good. */
export function openJobs(ground: Ground, branch: Branch): number[] {
  const { problem } = ground;
  const list: number[] = [];
  for (let job = 0; job < problem.jobs.length; job++) {
    if (branch.fixed[job] !== open) continue;
    const cost = costInBranch(ground, branch, job);
    if (!cost || !fits(cost, branch.left)) exclude(ground, branch, job);
    else if (effectOf(problem.effects, branch.state, job) > 0) list.push(job);
  }
  // A job that was listed may have been left out with one that came after it.
  return list.filter((job) => branch.fixed[job] === open);
}

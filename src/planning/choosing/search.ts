import {
  type Branch,
  chosenIn,
  copyBranch,
  exclude,
  type Ground,
  include,
  open,
  openJobs,
} from './branch.ts';
import { effectOf } from './effects.ts';
import type { Heap } from './heap.ts';
import type { BoundMemory } from './relaxed.ts';

/** A search for the best choice, as far as it is. */
export interface Search extends Ground {
  readonly memory: BoundMemory;
  readonly tolerance: number;
  readonly waiting: Heap<Waiting>;
  looks: number;
  best: number;
  chosen: readonly number[];
}

/** A branch that was bounded, with the job to decide next and the multipliers of its bound. */
export interface Waiting {
  readonly branch: Branch;
  readonly job: number;
  readonly split: Float64Array;
  readonly moneyPart: number;
}

/** Keeps the choice of a branch where it is better than the best so far. */
export function keepBest(search: Search, branch: Branch): boolean {
  if (branch.gain <= search.best + search.tolerance) return false;
  search.best = branch.gain;
  search.chosen = chosenIn(branch);
  return true;
}

/** Fills up a branch in an order of jobs, as far as they fit. */
export function fillUp(search: Search, branch: Branch, order: readonly number[]): Branch {
  const filled = copyBranch(branch);
  for (const job of order) if (filled.fixed[job] === open) include(search, filled, job);
  return filled;
}

/** Fills up a branch, always with the job that takes most off for its size now; `size` joins money and hours. */
export function greedily(search: Search, branch: Branch, moneyPart: number): Branch {
  const { problem, closed } = search;
  const { limit } = problem;
  const filled = copyBranch(branch);
  const sizeOf = (job: number) =>
    (closed[job] ?? []).reduce((sum, one) => {
      if (filled.fixed[one] !== open) return sum;
      const { money = 0, hours = 0 } = problem.jobs[one] ?? {};
      return sum + (moneyPart * money) / limit.money + ((1 - moneyPart) * hours) / limit.hours;
    }, 1e-9);
  for (;;) {
    let best = -1;
    let bestRatio = 0;
    for (const job of openJobs(search, filled)) {
      const ratio = effectOf(problem.effects, filled.state, job) / sizeOf(job);
      if (ratio <= bestRatio) continue;
      best = job;
      bestRatio = ratio;
    }
    if (best < 0 || !include(search, filled, best)) return filled;
  }
}

/** Takes one chosen job out, fills up with others, and keeps what is better, until nothing is. */
export function improve(search: Search, root: Branch): void {
  for (let better = true; better; ) {
    better = false;
    for (const job of search.chosen) {
      const rest = search.chosen.filter((one) => !search.needing[job]?.includes(one));
      const tried = fillUp(search, root, rest);
      exclude(search, tried, job);
      if (keepBest(search, greedily(search, tried, search.memory.moneyPart))) {
        better = true;
        break;
      }
    }
  }
}

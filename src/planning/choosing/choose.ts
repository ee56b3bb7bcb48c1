import { type Bound, boundOf } from './bound.ts';
import { type Branch, copyBranch, exclude, include, open, openJobs } from './branch.ts';
import { type Choice, type ChoiceProblem, closures, dependents } from './choice.ts';
import { applyJob, effectOf, stateAtStart } from './effects.ts';
import { pop, push } from './heap.ts';
import { boundMemory } from './relaxed.ts';
import { fillUp, greedily, improve, keepBest, type Search, type Waiting } from './search.ts';

/** Settles the jobs of which the bound proves that a better choice holds them, or does not. */
function settle(
  search: Search,
  branch: Branch,
  bound: Bound,
  jobs: readonly number[],
): 'none' | 'some' | 'closed' {
  const { memory, best, tolerance } = search;
  const slack = branch.gain + bound.last - best - tolerance;
  const worthOf = (job: number) => (memory.values[job] ?? 0) - bound.price * (memory.sizes[job] ?? 0);
  const sure = jobs.filter((job) => slack - Math.abs(worthOf(job)) <= 0);
  for (const job of sure) {
    if (branch.fixed[job] !== open) continue;
    const done = worthOf(job) < 0 ? exclude(search, branch, job) : include(search, branch, job);
    if (!done) return 'closed';
  }
  return sure.length > 0 ? 'some' : 'none';
}

/** The job to decide next: the one that the relaxed choice takes in part, else the best for its size. */
function nextJob({ memory }: Search, jobs: readonly number[]): number {
  const inPart = memory.order.find((job) => (memory.taken[job] ?? 0) > 0 && (memory.taken[job] ?? 0) < 1);
  return inPart ?? memory.order[0] ?? jobs[0] ?? 0;
}

const firstSteps = 60;
const laterSteps = 6;

/** Bounds a branch; where it may hold something better it waits for its turn. */
function look(search: Search, branch: Branch, above: number): void {
  for (let most = above; ; ) {
    const first = search.looks === 0;
    search.looks++;
    const jobs = openJobs(search, branch);
    keepBest(search, branch);
    if (jobs.length === 0) return;
    const enough = search.best + search.tolerance - branch.gain;
    const bound = boundOf(
      search.problem,
      branch,
      search.memory,
      jobs,
      enough,
      first ? firstSteps : laterSteps,
    );
    most = Math.min(most, branch.gain + bound.most);
    if (most <= search.best + search.tolerance) return;
    keepBest(search, fillUp(search, branch, search.memory.order));
    const settled = settle(search, branch, bound, jobs);
    if (settled === 'closed') return;
    if (settled === 'some') continue;
    const { split, moneyPart } = search.memory;
    push(search.waiting, most, {
      branch,
      job: nextJob(search, jobs),
      split: Float64Array.from(split),
      moneyPart,
    });
    return;
  }
}

function restore({ memory }: Search, { split, moneyPart }: Waiting): void {
  memory.split.set(split);
  memory.moneyPart = moneyPart;
}

/** Best part first, each split in two: with the job and without it. Returns the highest bound that is left. */
function run(search: Search, mostLooks: number): number {
  for (;;) {
    const top = pop(search.waiting);
    if (!top || top.key <= search.best + search.tolerance) return search.best;
    if (search.looks >= mostLooks) return top.key;
    const { branch, job } = top.value;
    const withJob = copyBranch(branch);
    restore(search, top.value);
    if (include(search, withJob, job)) look(search, withJob, top.key);
    restore(search, top.value);
    if (exclude(search, branch, job)) look(search, branch, top.key);
  }
}

/** Leaves out the chosen jobs that take nothing off once the others are done and that no other needs. */
function withoutIdle({ problem, chosen, needing }: Search): readonly number[] {
  let kept = chosen;
  for (const job of [...chosen].reverse()) {
    const rest = kept.filter((one) => one !== job);
    if (rest.some((one) => needing[job]?.includes(one))) continue;
    const state = stateAtStart(problem.effects, problem.weights);
    for (const one of rest) applyJob(problem.effects, state, one);
    if (effectOf(problem.effects, state, job) <= 1e-12) kept = rest;
  }
  return kept;
}

/** How many parts are looked at before the search ends: less than a tenth of a second on a house with every fault. */
const usualLooks = 1000;

/**
 * Chooses the jobs that take off most within money and hours, each with what it requires: branch and bound, best part
 * first. Exact unless `mostLooks` parts were looked at before the end; then the best found, with the bound that is
 * proven. Looks are counted instead of time, so that the same house always gets the same plan.
 */
export function choose(problem: ChoiceProblem, mostLooks = usualLooks): Choice {
  const { effects, weights, jobs, shared, limit } = problem;
  const closed = closures(jobs);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const search: Search = {
    problem,
    closed,
    needing: dependents(closed),
    memory: boundMemory(problem),
    tolerance: 1e-9 * Math.max(total, 1e-9),
    waiting: { items: [] },
    looks: 0,
    best: -1,
    chosen: [],
  };
  const root: Branch = {
    state: stateAtStart(effects, weights),
    fixed: new Uint8Array(jobs.length),
    paid: new Uint8Array(shared.length),
    left: limit,
    gain: 0,
  };
  for (const moneyPart of [0, 0.3, 0.6, 1]) keepBest(search, greedily(search, root, moneyPart));
  improve(search, root);
  look(search, copyBranch(root), total);
  const bound = run(search, mostLooks);
  return {
    chosen: withoutIdle(search),
    gain: Math.max(0, search.best),
    bound,
    exact: bound <= search.best + search.tolerance,
    looks: search.looks,
  };
}

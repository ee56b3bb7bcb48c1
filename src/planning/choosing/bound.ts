import type { ChoiceProblem, Spend } from './choice.ts';
import { addDemand, type BoundMemory, fillCaps, fillLost, type Part, worthAtSplit } from './relaxed.ts';

/** A bound on what can still be taken off. */
export interface Bound {
  readonly most: number;
  /** The bound of the last step, to which the values, sizes and relaxed choice in the memory belong. */
  readonly last: number;
  /** What one unit of the joined limit is worth at the margin of the last step. */
  readonly price: number;
}

type Filled = Omit<Bound, 'last'>;

/** An unpaid shared cost is spread over the open jobs that use it: never more than what they would really pay. */
function openCosts(problem: ChoiceProblem, part: Part, open: readonly number[]): Spend[] {
  const users = problem.shared.map(() => 0);
  for (const job of open)
    for (const one of problem.jobs[job]?.shared ?? []) users[one] = (users[one] ?? 0) + 1;
  return open.map((position) => {
    const job = problem.jobs[position];
    let money = job?.money ?? 0;
    let hours = job?.hours ?? 0;
    for (const one of job?.shared ?? []) {
      if (part.paid[one]) continue;
      money += (problem.shared[one]?.money ?? 0) / (users[one] ?? 1);
      hours += (problem.shared[one]?.hours ?? 0) / (users[one] ?? 1);
    }
    return { money, hours };
  });
}

/** Size against a limit: what has no limit, or still all of it for nothing, has no size. */
const against = (amount: number, limit: number) =>
  amount <= 0 || limit === Number.POSITIVE_INFINITY ? 0 : amount / Math.max(limit, 1e-12);

/** Fills the joined limit with jobs by value for size, the last in part; returns the value and the marginal price. */
function fill(memory: BoundMemory, open: readonly number[]): Filled {
  const { values, sizes, taken, ratio } = memory;
  for (const job of open) {
    const size = sizes[job] ?? 0;
    ratio[job] = size === 0 ? Number.POSITIVE_INFINITY : (values[job] ?? 0) / size;
    taken[job] = 0;
  }
  memory.order = [...open].sort((a, b) => (ratio[b] ?? 0) - (ratio[a] ?? 0) || a - b);
  let room = 1;
  let most = 0;
  for (const job of memory.order) {
    const size = sizes[job] ?? 0;
    const value = values[job] ?? 0;
    if (value <= 0) continue;
    if (size <= room) {
      taken[job] = 1;
      room -= size;
      most += value;
      continue;
    }
    taken[job] = room / size;
    return { most: most + (value * room) / size, price: value / size };
  }
  return { most, price: 0 };
}

interface Question {
  readonly problem: ChoiceProblem;
  readonly part: Part;
  readonly open: readonly number[];
  readonly costs: readonly Spend[];
}

/** The whole bound at the multipliers as they stand. */
function boundNow({ problem, part, open, costs }: Question, memory: BoundMemory): Filled {
  const { effects } = problem;
  open.forEach((job, position) => {
    const cost = costs[position];
    memory.values[job] = worthAtSplit(effects, part.state.weights, memory, job);
    memory.sizes[job] =
      memory.moneyPart * against(cost?.money ?? 0, part.left.money) +
      (1 - memory.moneyPart) * against(cost?.hours ?? 0, part.left.hours);
  });
  const filled = fill(memory, open);
  let whole = 0;
  for (let way = 0; way < effects.wayCount; way++)
    whole += (1 - (memory.split[way] ?? 0)) * (memory.caps[way] ?? 0);
  return { most: whole + filled.most, price: filled.price };
}

/** One step of the multipliers toward a lower bound, against the jobs that the relaxed choice took. */
function step({ problem, part, open, costs }: Question, memory: BoundMemory, length: number): void {
  const { effects } = problem;
  memory.demand.fill(0);
  let money = 0;
  let hours = 0;
  open.forEach((job, position) => {
    const taken = memory.taken[job] ?? 0;
    if (taken === 0) return;
    addDemand(effects, part.state.weights, memory, job, taken);
    money += taken * against(costs[position]?.money ?? 0, part.left.money);
    hours += taken * against(costs[position]?.hours ?? 0, part.left.hours);
  });
  let square = 0;
  for (let way = 0; way < effects.wayCount; way++)
    square += ((memory.demand[way] ?? 0) - (memory.caps[way] ?? 0)) ** 2;
  if (square > 0) {
    for (let way = 0; way < effects.wayCount; way++) {
      const slope = (memory.demand[way] ?? 0) - (memory.caps[way] ?? 0);
      memory.split[way] = Math.min(1, Math.max(0, (memory.split[way] ?? 0) - (length * slope) / square));
    }
  }
  const turned = memory.moneyPart + 0.1 * Math.max(-1, Math.min(1, money - hours));
  if (part.left.money !== Number.POSITIVE_INFINITY && part.left.hours !== Number.POSITIVE_INFINITY)
    memory.moneyPart = Math.min(1, Math.max(0, turned));
}

/**
 * An upper bound on what the open jobs can still take off: for each way in, part of its weight is counted job by job
 * (jobs never take off more together than one by one), the rest whole (never more than with all jobs done); the two
 * limits are joined into one, filled with jobs and a part of a job. Lower by some steps of the multipliers.
 * (Lagrangian relaxation; the one-by-one part is the bound of Nemhauser, Wolsey and Fisher 1978 for submodular gains.)
 * Stops early below `enough`, where the part holds nothing better.
 */
export function boundOf(
  problem: ChoiceProblem,
  part: Part,
  memory: BoundMemory,
  open: readonly number[],
  enough: number,
  steps: number,
): Bound {
  const question: Question = { problem, part, open, costs: openCosts(problem, part, open) };
  fillCaps(problem, part, memory, open);
  fillLost(problem, part, memory, open);
  let now = boundNow(question, memory);
  let most = now.most;
  let pace = 1;
  let idle = 0;
  memory.bestSplit.set(memory.split);
  for (let taken = 0; taken < steps && most > enough; taken++) {
    step(question, memory, pace * Math.max(now.most - enough, 1e-12));
    now = boundNow(question, memory);
    if (now.most < most) {
      most = now.most;
      memory.bestSplit.set(memory.split);
      idle = 0;
    } else if (++idle >= 4) {
      // The multipliers swing: shorter steps, from the best so far.
      pace /= 2;
      idle = 0;
      memory.split.set(memory.bestSplit);
      now = boundNow(question, memory);
    }
  }
  return { most, last: now.most, price: now.price };
}

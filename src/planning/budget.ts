import type { Assessment } from '../assess/assess.ts';
import type { Flow } from '../flow/flow.ts';
import type { Proposal } from '../ranking/actions.ts';
import { jobsOf, orderOfDoing } from '../ranking/order.ts';
import type { Ranked } from '../ranking/rank.ts';
import type { BudgetJob, BudgetPlan, LeftOut, Limits, Step } from './budget-plan.ts';
import { type Choice, type ChoiceProblem, fits, type Spend } from './choosing/choice.ts';
import { choose } from './choosing/choose.ts';
import { applyJob, effectOf, layOutEffects, stateAtStart } from './choosing/effects.ts';
import { reduceChains } from './choosing/reduce-chains.ts';
import { costsOfJobs, costTogether, type JobCost, type Range } from './job-cost.ts';

interface Material {
  readonly list: readonly Proposal[];
  readonly costs: readonly JobCost[];
  readonly problem: Omit<ChoiceProblem, 'limit'>;
}

const nothing: Range = { low: 0, high: 0 };

/** Jobs are held against the limit at the high end of their range: a plan that fits then fits in any case. */
const end: keyof Range = 'high';

function materialOf({ ranked, chains, facts }: Assessment, flow: Flow): Material {
  const all = [...ranked].sort((a, b) => a.turn - b.turn).map((one) => one.proposal);
  const allCosts = costsOfJobs(flow, all, facts.computed);
  const list = all.filter((_, position) => !allCosts[position]?.unpriced);
  const costs = costsOfJobs(flow, list, facts.computed);
  const positions = new Map(list.map((one, position) => [one.id, position]));
  const sharedIds = [...new Set(costs.flatMap((cost) => cost.shared.map((one) => one.id)))];
  const reduced = reduceChains(chains, jobsOf(list));
  return {
    list,
    costs,
    problem: {
      effects: layOutEffects({ readiness: [], ways: reduced.ways }, reduced.jobs),
      weights: reduced.weights,
      jobs: list.map((one, position) => ({
        money: costs[position]?.money[end] ?? 0,
        hours: costs[position]?.hours[end] ?? 0,
        shared: (costs[position]?.shared ?? []).map(({ id }) => sharedIds.indexOf(id)),
        requires: one.requires.flatMap((id) => positions.get(id) ?? []),
      })),
      shared: sharedIds.map((id) => {
        const cost = costs.flatMap((one) => one.shared).find((one) => one.id === id);
        return { money: cost?.money[end] ?? 0, hours: 0 };
      }),
    },
  };
}

const limitOf = ({ money, hours }: Limits): Spend => ({
  money: money ?? Number.POSITIVE_INFINITY,
  hours: hours ?? Number.POSITIVE_INFINITY,
});

/** The job with all it requires that is not chosen yet. */
function missing({ problem }: Material, chosen: ReadonlySet<number>, job: number): number[] {
  const seen = new Set<number>();
  const add = (one: number): void => {
    if (seen.has(one) || chosen.has(one)) return;
    seen.add(one);
    for (const next of problem.jobs[one]?.requires ?? []) add(next);
  };
  add(job);
  return [...seen];
}

function leftOutOf(
  material: Material,
  choice: Choice,
  limits: Limits,
  unpriced: readonly Proposal[],
): LeftOut[] {
  const { list, costs, problem } = material;
  const chosen = new Set(choice.chosen);
  const state = stateAtStart(problem.effects, problem.weights);
  for (const job of chosen) applyJob(problem.effects, state, job);
  const costOf = (jobs: Iterable<number>) => costTogether([...jobs].flatMap((job) => costs[job] ?? []));
  const spent = costOf(chosen);
  const less = (a: Range, b: Range): Range => ({ low: a.low - b.low, high: a.high - b.high });
  const left = list.flatMap((one, position): LeftOut[] => {
    if (chosen.has(position) || one.treats.size === 0) return [];
    const whole = costOf([...chosen, ...missing(material, chosen, position)]);
    const adds = effectOf(problem.effects, state, position);
    const fit = fits({ money: whole.money[end], hours: whole.hours[end] }, limitOf(limits));
    const why = fit || adds <= 1e-12 ? 'little' : 'limit';
    return [
      { id: one.id, adds, money: less(whole.money, spent.money), hours: less(whole.hours, spent.hours), why },
    ];
  });
  const without = unpriced.map(
    (one): LeftOut => ({ id: one.id, adds: 0, money: nothing, hours: nothing, why: 'noPrice' }),
  );
  return [...left.sort((a, b) => b.adds - a.adds || (a.id < b.id ? -1 : 1)), ...without];
}

function stepOf(
  material: Material,
  before: Choice,
  limits: Limits,
  what: 'money' | 'hours',
  extra: number,
): Step | undefined {
  const limit = limits[what];
  if (limit === undefined) return undefined;
  const after = choose({ ...material.problem, limit: limitOf({ ...limits, [what]: limit + extra }) });
  const idsOf = (jobs: readonly number[]) => jobs.flatMap((job) => material.list[job]?.id ?? []);
  const none = after.gain <= before.gain + 1e-9 * Math.max(1, before.gain);
  return {
    extra,
    adds: none ? 0 : after.gain - before.gain,
    newJobs: none ? [] : idsOf(after.chosen.filter((job) => !before.chosen.includes(job))),
    dropped: none ? [] : idsOf(before.chosen.filter((job) => !after.chosen.includes(job))),
  };
}

function inOrder(material: Material, chosen: readonly number[], { chains }: Assessment): BudgetJob[] {
  const ids = new Set(chosen.map((job) => material.list[job]?.id));
  const position = new Map(material.list.map((one, at) => [one.id, at]));
  // What a job requires and nobody has to do here keeps it waiting for nothing.
  const list = chosen.flatMap((job) => {
    const one = material.list[job];
    return one ? [{ ...one, requires: one.requires.filter((id) => ids.has(id)) }] : [];
  });
  return orderOfDoing(list, chains, 0).map(({ proposal, share }) => {
    const cost = material.costs[position.get(proposal.id) ?? -1];
    return { id: proposal.id, share, money: cost?.money ?? nothing, hours: cost?.hours ?? nothing };
  });
}

/** How much more is tried for the question what a little more would add. */
export const moreMoney = 100;
export const moreHours = 4;

/**
 * The set of jobs of the list that takes most off within the limits, each with all it requires. Exact by branch and
 * bound; where the search ends early, the best found and how far it can be from the best.
 */
export function planWithin(assessment: Assessment, flow: Flow, limits: Limits): BudgetPlan {
  const material = materialOf(assessment, flow);
  const choice = choose({ ...material.problem, limit: limitOf(limits) });
  const priced = new Set(material.list);
  const unpriced = assessment.ranked
    .map((one: Ranked) => one.proposal)
    .filter((one) => !priced.has(one) && one.treats.size > 0);
  const together = costTogether(choice.chosen.flatMap((job) => material.costs[job] ?? []));
  return {
    limits,
    currency: flow.costs[0]?.currency,
    jobs: inOrder(material, choice.chosen, assessment),
    ...together,
    exposure: assessment.exposure,
    takenOff: choice.gain,
    possible: assessment.exposure - assessment.left,
    exact: choice.exact,
    gap: choice.exact || choice.gain === 0 ? 0 : (choice.bound - choice.gain) / choice.gain,
    leftOut: leftOutOf(material, choice, limits, unpriced),
    moreMoney: stepOf(material, choice, limits, 'money', moreMoney),
    moreHours: stepOf(material, choice, limits, 'hours', moreHours),
  };
}

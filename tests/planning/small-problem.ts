import type { ChoiceJob, ChoiceProblem, Spend } from '../../src/planning/choosing/choice.ts';
import { layOutEffects } from '../../src/planning/choosing/effects.ts';
import { reduceChains } from '../../src/planning/choosing/reduce-chains.ts';
import type { Job } from '../../src/ranking/exposure.ts';

/** A choice in the plain form of the ranking, from which the solver's own form is made. */
export interface SmallProblem {
  readonly readiness: readonly number[];
  readonly ways: readonly (readonly number[])[];
  readonly jobs: readonly Job[];
  readonly costs: readonly ChoiceJob[];
  readonly shared: readonly Spend[];
  readonly limit: Spend;
}

/** The solver's form of a small problem. */
export function problemOf({ readiness, ways, jobs, costs, shared, limit }: SmallProblem): ChoiceProblem {
  const reduced = reduceChains({ readiness, ways }, jobs);
  const effects = layOutEffects({ readiness: [], ways: reduced.ways }, reduced.jobs);
  return { effects, weights: reduced.weights, jobs: costs, shared, limit };
}

/** A job that removes one element, for problems in which gains only add up. */
export const removing = (element: number): Job => ({
  id: `j${element}`,
  lane: 0,
  treats: new Map([[element, 0]]),
  insteadOf: undefined,
});

/** Every job removes a way in of its own: the classic knapsack. */
export function knapsack(values: readonly number[], costs: readonly Spend[], limit: Spend): SmallProblem {
  return {
    readiness: values,
    ways: values.map((_, position) => [position]),
    jobs: values.map((_, position) => removing(position)),
    costs: costs.map((cost) => ({ ...cost, shared: [], requires: [] })),
    shared: [],
    limit,
  };
}

import type { AnswerSheet } from '../answers/answer.ts';
import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import { planWithin } from './budget.ts';
import type { BudgetPlan, Limits } from './budget-plan.ts';
import { type Curve, curveOf } from './curve.ts';
import { type Doubt, doubtOf } from './doubt.ts';
import { type SensitiveValue, sensitivityOf } from './sensitivity.ts';
import type { ToFindOut } from './to-find-out.ts';
import { type VisitBrief, visitBrief } from './visit-brief.ts';

/** Everything about a list that goes beyond its order. */
export interface Planning {
  readonly doubt: Doubt;
  readonly sensitive: readonly SensitiveValue[];
  /** Nothing where no limit was given. */
  readonly budget: BudgetPlan | undefined;
  /** Of the plan within the budget, or of the whole list. */
  readonly curve: Curve;
  readonly brief: VisitBrief;
}

/** Works out doubt, budget, curve and brief: when a report is made, never in a turn. */
export function planFor(
  checklist: Checklist,
  sheet: AnswerSheet,
  assessment: Assessment,
  unknown: readonly ToFindOut[],
  { seed, limits = {} }: { readonly seed: number; readonly limits?: Limits },
): Planning {
  const { flow } = checklist;
  const limited = limits.money !== undefined || limits.hours !== undefined;
  const budget = limited ? planWithin(assessment, flow, limits) : undefined;
  return {
    doubt: doubtOf(checklist, assessment, seed),
    sensitive: sensitivityOf(checklist, assessment),
    budget,
    curve: curveOf(assessment, flow, budget?.jobs),
    brief: visitBrief(checklist, sheet, unknown),
  };
}

import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Upkeep } from '../flow/schema/action.ts';

/** The upkeep that fits this house: what its answers call for, and what every house needs. */
export function upkeepFor(checklist: Checklist, assessment: Assessment): Upkeep[] {
  return checklist.rules.upkeep
    .filter(({ when }) => when === undefined || when(assessment.facts, {}) === 'yes')
    .map(({ upkeep }) => upkeep);
}

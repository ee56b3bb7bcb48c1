import { type FlowIndex, indexFlow } from '../answers/flow-index.ts';
import { compileRules, type Rules } from '../findings/rules.ts';
import type { Flow } from '../flow/flow.ts';

/** A flow made ready for walking and assessing; built once, never changed. */
export interface Checklist {
  readonly flow: Flow;
  readonly index: FlowIndex;
  readonly rules: Rules;
}

/** Makes a checked flow ready. */
export function prepareChecklist(flow: Flow): Checklist {
  const index = indexFlow(flow);
  return { flow, index, rules: compileRules(index) };
}

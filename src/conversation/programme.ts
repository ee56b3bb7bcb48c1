import { type Checklist, prepareChecklist } from '../assess/checklist.ts';
import type { Flow } from '../flow/flow.ts';
import { compileMachine, type WalkMachine } from '../machine/compile-machine.ts';

/** Everything a turn needs besides the record and the message: frozen, built once. */
export interface Programme {
  readonly checklist: Checklist;
  readonly machine: WalkMachine;
}

/** Builds the programme of a checked flow. */
export function buildProgramme(flow: Flow): Programme {
  const checklist = prepareChecklist(flow);
  return { checklist, machine: compileMachine(checklist.index) };
}

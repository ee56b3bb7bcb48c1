import type { Part } from '../../conversation/message.ts';
import type { Say } from '../../wording/say.ts';
import type { PracticeEvent, PracticePending, PracticeState } from './state.ts';

/** What came of a message: the next state, what is said, and the choices that are offered. */
export interface PracticeTurned {
  readonly state: PracticeState;
  readonly parts: readonly Part[];
  readonly choices?: readonly { readonly id: string; readonly label: Say }[];
}

/** The state with more events. */
export function withEvents(state: PracticeState, events: readonly PracticeEvent[]): PracticeState {
  return events.length === 0 ? state : { ...state, events: [...state.events, ...events] };
}

/** The state waiting for something. */
export function withPending(state: PracticeState, pending: PracticePending): PracticeState {
  return { ...state, pending };
}

/** The state waiting for nothing. */
export function withoutPending(state: PracticeState): PracticeState {
  const { pending: _, ...rest } = state;
  return rest;
}

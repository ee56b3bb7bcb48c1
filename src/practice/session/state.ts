import type { Side } from '../../flow/schema/base.ts';
import type { PracticeHouse } from '../house/practice-house.ts';

/** What a trainee did, in the order in which it was done. */
export type PracticeEvent =
  | { readonly kind: 'went'; readonly stop: string }
  /** Saw it with own eyes; `sides` for a question by side. */
  | { readonly kind: 'looked'; readonly key: string; readonly sides: readonly Side[] }
  /** Asked the resident; `told` when the answer was the truth. */
  | { readonly kind: 'asked'; readonly key: string; readonly told: boolean }
  /** A finding at a place: `vents.coarse-high@left`. */
  | { readonly kind: 'recorded'; readonly pair: string }
  | { readonly kind: 'tookBack'; readonly pair: string }
  /** A job at its places (`''` for the house); `limit` when a measure was given that breaks the rulebook. */
  | {
      readonly kind: 'advised';
      readonly action: string;
      readonly places: readonly string[];
      readonly limit?: { readonly id: string; readonly saidMetres: number };
    }
  | { readonly kind: 'wrongAdvice'; readonly id: string }
  | { readonly kind: 'cautioned'; readonly caution: string }
  | { readonly kind: 'promised'; readonly said: string }
  | { readonly kind: 'unsafe'; readonly id: string }
  | { readonly kind: 'hint'; readonly stop: string }
  | { readonly kind: 'alarm'; readonly outcome: 'played' | 'answered' | 'ignored' };

/** A choice among things that a message may mean, waiting for an answer. */
export interface PendingChoice {
  readonly verb: 'look' | 'find' | 'takeBack' | 'advise' | 'caution';
  readonly ids: readonly string[];
  readonly sides: readonly Side[];
  readonly member?: { readonly group: string; readonly number: number | undefined };
  readonly text: string;
}

export type PracticePending =
  | { readonly kind: 'choice'; readonly choice: PendingChoice }
  /** It is known what, not yet where. */
  | { readonly kind: 'place'; readonly choice: PendingChoice }
  | { readonly kind: 'emergency'; readonly matched: string }
  | { readonly kind: 'done' };

/** The first page as the trainee writes it: the first three jobs, in order. */
export interface FirstPageDraft {
  readonly jobs: readonly string[];
}

/** A session: plain data, all of it. */
export interface PracticeState {
  readonly house: PracticeHouse;
  /** Only this part of the walk is practised. */
  readonly part?: string;
  readonly phase: 'walking' | 'firstPage' | 'debriefed' | 'emergency' | 'paused';
  /** Where to go on after an emergency or a pause. */
  readonly before?: 'walking' | 'firstPage' | 'debriefed';
  readonly at?: string;
  readonly events: readonly PracticeEvent[];
  readonly firstPage?: FirstPageDraft;
  readonly pending?: PracticePending;
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  readonly revision: number;
}

/** A session in which nothing was done yet. */
export function newSession(house: PracticeHouse, now: Date, part?: string): PracticeState {
  return {
    house,
    ...(part === undefined ? {} : { part }),
    phase: 'walking',
    events: [],
    startedAt: now.toISOString(),
    revision: 0,
  };
}

/** The pairs on the trainee's list now: recorded and not taken back. */
export function recordedPairs(state: PracticeState): string[] {
  const list = new Set<string>();
  for (const event of state.events) {
    if (event.kind === 'recorded') list.add(event.pair);
    if (event.kind === 'tookBack') list.delete(event.pair);
  }
  return [...list];
}

import type { AnswerKey, AnswerSheet } from '../answers/answer.ts';
import type { Audience, UnitSystem } from '../wording/say.ts';
import type { AnswerKinds } from './answer-kinds.ts';
import type { CallState, OpeningAsk } from './call/call-state.ts';
import type { HandOverTo } from './hand-over/terms.ts';

/** Unguessable name of a walk. */
export type WalkId = string & { readonly walkId: unique symbol };

/** What a short question to the person waits for, besides the question of the walk. */
export type Pending =
  | { readonly kind: 'startOver' }
  | { readonly kind: 'forget' }
  | { readonly kind: 'emergency'; readonly matched: string }
  | { readonly kind: 'safe' }
  /** Whether a call may be passed on; `closing`: asked before it is closed. */
  | { readonly kind: 'handOver'; readonly to: HandOverTo; readonly closing?: true }
  /** Whether answers that were passed on take the place of those here. */
  | { readonly kind: 'takeOver'; readonly code: string }
  /** One of the questions at the start of a guided call. */
  | { readonly kind: 'opening'; readonly ask: OpeningAsk };

/** Where the walk stands. */
export interface Cursor {
  readonly phase: 'asking' | 'readBack' | 'finished' | 'emergency' | 'paused';
  /** The question asked now; also kept while the walk is stopped. */
  readonly key?: AnswerKey;
  readonly pending?: Pending;
}

/** A job of the list that was done, with the day (ISO date). */
export interface DoneJob {
  /** Such as `mesh-vents@left`. */
  readonly action: string;
  readonly date: string;
}

/** A walk as it is stored: the answers and where it stands. Everything else is worked out from these. */
export interface WalkRecord {
  readonly id: WalkId;
  /** Fingerprint of the flow that asked last. */
  readonly flow: string;
  readonly audience: Audience;
  readonly language: string;
  /** Chosen by command; otherwise the answers and the place decide. */
  readonly units?: UnitSystem;
  /** The person said the carrier's word for no more messages: nothing but an order to leave is said until they ask. */
  readonly silent?: true;
  /** A call that a volunteer guides. */
  readonly call?: CallState;
  readonly sheet: AnswerSheet;
  /** Kinds of the answered questions whose answers do not show it: a number may be feet or a year. */
  readonly kinds?: AnswerKinds;
  readonly cursor: Cursor;
  /** Counts up with each change; a store saves only over the revision it was loaded with. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  readonly updatedAt: string;
  /** Free notes, each beside the question at which it was taken. */
  readonly notes: readonly { readonly key?: AnswerKey; readonly text: string }[];
  /** Jobs marked as done. */
  readonly done?: readonly DoneJob[];
  /** The answers as they were before jobs were marked done on others, the oldest first: what is compared with now. */
  readonly earlier?: readonly { readonly date: string; readonly sheet: AnswerSheet }[];
}

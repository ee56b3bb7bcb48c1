import type { AnswerKey, AnswerSheet } from '../answers/answer.ts';
import type { Audience, UnitSystem } from '../wording/say.ts';

/** Unguessable name of a walk. */
export type WalkId = string & { readonly walkId: unique symbol };

/** What a short question to the person waits for, besides the question of the walk. */
export type Pending =
  | { readonly kind: 'startOver' }
  | { readonly kind: 'forget' }
  | { readonly kind: 'emergency'; readonly matched: string }
  | { readonly kind: 'safe' };

/** Where the walk stands. */
export interface Cursor {
  readonly phase: 'asking' | 'readBack' | 'finished' | 'emergency' | 'paused';
  /** The question asked now; also kept while the walk is stopped. */
  readonly key?: AnswerKey;
  readonly pending?: Pending;
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
  readonly sheet: AnswerSheet;
  readonly cursor: Cursor;
  /** Counts up with each change; a store saves only over the revision it was loaded with. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  readonly updatedAt: string;
  /** Free notes, each beside the question at which it was taken. */
  readonly notes: readonly { readonly key?: AnswerKey; readonly text: string }[];
}

import type { Reply } from './message.ts';
import type { WalkId, WalkRecord } from './record.ts';

/** A turn to be kept: all of it or nothing. */
export interface TurnToKeep {
  readonly record: WalkRecord;
  /** The revision that was loaded, or `new` for a walk that is not there yet. */
  readonly expected: number | 'new';
  /** The channel's own id of the message, with the reply that a retry gets again. */
  readonly message?: { readonly channel: string; readonly id: string; readonly reply: Reply };
}

/** A line of the list of walks. */
export interface WalkSummary {
  readonly id: WalkId;
  readonly startedAt: string;
  readonly updatedAt: string;
  readonly phase: WalkRecord['cursor']['phase'];
  readonly answered: number;
  /** The walk's own label, when it was answered. */
  readonly label?: string;
}

/**
 * Where walks are kept. Not its business: the flow, the reading of answers, expiry rules, sending anything.
 * A commit that returned `saved` survives `kill -9` and a power cut.
 */
export interface WalkStore {
  readonly load: (id: WalkId) => Promise<WalkRecord | undefined>;
  /** The reply already given to a message, if that message was seen. */
  readonly replyTo: (channel: string, messageId: string) => Promise<Reply | undefined>;
  /** `conflict`: another turn came between; load again and run the turn again. `seen`: the message was already answered. */
  readonly commit: (turn: TurnToKeep) => Promise<'saved' | 'conflict' | 'seen'>;
  /** Newest first. */
  readonly list: () => Promise<readonly WalkSummary[]>;
  readonly remove: (id: WalkId) => Promise<boolean>;
  readonly close: () => Promise<void>;
}

/** The time, from outside. */
export type Clock = () => Date;

import type { Reply } from './message.ts';
import type { WalkId, WalkRecord } from './record.ts';

/** A turn to be kept: all of it or nothing. */
export interface TurnToKeep {
  readonly record: WalkRecord;
  /** The revision that was loaded, or `new` for a walk that is not there yet. */
  readonly expected: number | 'new';
  /** The channel's own id of the message, with the reply that a retry gets again. */
  readonly message?: { readonly channel: string; readonly id: string; readonly reply: Reply };
  /** Everything kept of the walk goes, as by `remove`; only the reply to this message stays, without the walk's id. */
  readonly erase?: true;
  /** To be told to another system: kept with the turn, delivered later. */
  readonly announce?: Announcement;
  /** A walk that waited under this code went into the record; `conflict` when somebody took it meanwhile. */
  readonly takes?: { readonly code: string; readonly now: string };
}

/** That a walk was finished. */
export interface Announcement {
  /** The same for every attempt, so that the receiver can tell a repetition. */
  readonly id: string;
  readonly walk: WalkId;
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly at: string;
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

/** An announcement on its way. */
export interface Delivery extends Announcement {
  readonly state: 'waiting' | 'sent' | 'dead';
  readonly attempts: number;
  /** When it is to be tried next; ISO 8601, UTC. */
  readonly dueAt: string;
  /** Why the last attempt failed. */
  readonly problem?: string;
}

/** What came of an attempt to deliver. */
export type DeliveryOutcome =
  | { readonly state: 'sent' }
  | { readonly state: 'waiting'; readonly dueAt: string; readonly problem: string }
  | { readonly state: 'dead'; readonly problem: string };

/** The outbox. Not its business: sending, how often to try, when to give up. */
export interface DeliveryStore {
  /** Waiting and due, the longest due first. */
  readonly due: (now: string, limit: number) => Promise<readonly Delivery[]>;
  /** Takes a due delivery until a moment, so that no other process sends it meanwhile; `false`: another was faster. */
  readonly claim: (delivery: Delivery, until: string) => Promise<boolean>;
  /** Counts the attempt and notes what came of it. */
  readonly settle: (id: string, outcome: DeliveryOutcome) => Promise<void>;
  /** Newest first. */
  readonly list: (state: Delivery['state'], limit: number) => Promise<readonly Delivery[]>;
  /** Puts a dead delivery back to wait, with its attempts forgotten; `false`: there is no such dead one. */
  readonly resend: (id: string, now: string) => Promise<boolean>;
}

/** A walk that waits for whoever has its code. */
export interface WaitingWalk {
  /** A hash of the code: what is stored opens nothing. */
  readonly code: string;
  /** The walk from which it comes, and with which it goes. */
  readonly walk: WalkId;
  /** When the code stops working; ISO 8601, UTC. */
  readonly until: string;
  /** The walk, readable only with the code. */
  readonly sealed: string;
}

/** Walks between two people. Not its business: codes, sealing, how long they wait. */
export interface HandOverStore {
  /**
   * Keeps it, in place of what waits under the same code from the same walk. `taken`: somebody took that already;
   * `other`: the code belongs to another walk. Then nothing is changed.
   */
  readonly leave: (waiting: WaitingWalk) => Promise<'left' | 'taken' | 'other'>;
  /** The codes under which a walk waits untaken. */
  readonly untaken: (walk: WalkId) => Promise<readonly string[]>;
  /** Changes what waits untaken under a code, not its time. */
  readonly renew: (code: string, sealed: string) => Promise<void>;
  /** Takes back whatever comes from a walk. */
  readonly withdraw: (walk: WalkId) => Promise<void>;
  /** What waits under a code, still untaken. */
  readonly waiting: (code: string, now: string) => Promise<string | undefined>;
  /** Takes what waits, once; whoever took it gets the same again until `again`, in case it got lost on the way. */
  readonly take: (
    code: string,
    taker: { readonly by: string; readonly now: string; readonly again: string },
  ) => Promise<string | undefined>;
}

/** A store behind a server: walks, the outbox, and what is needed to run for years. */
export interface ServerStore extends WalkStore {
  readonly deliveries: DeliveryStore;
  readonly handOvers: HandOverStore;
  /**
   * Removes walks that nobody changed since `walksBefore`, replies and sent deliveries from before `messagesBefore`,
   * and what waited until before `handOversBefore`; gives the number of walks removed.
   */
  readonly sweep: (limits: {
    walksBefore?: string;
    messagesBefore?: string;
    handOversBefore?: string;
  }) => Promise<number>;
  /** Rejects when the store cannot be used. */
  readonly ping: () => Promise<void>;
}

/** The time, from outside. */
export type Clock = () => Date;

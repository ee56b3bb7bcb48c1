import type { WalkId, WalkRecord } from '../record.ts';
import type { HandOverTerms, HandOverTo } from './terms.ts';

/** What became of leaving a walk for somebody else. */
export type LeftWalk =
  | {
      readonly kind: 'left';
      readonly code: string;
      readonly hours: number;
      readonly reach?: string;
      /** Of the chat service, for the program of a second volunteer. */
      readonly address?: string;
    }
  /** `why` is a sentence for the volunteer. */
  | { readonly kind: 'failed'; readonly why: string };

/** What a code leads to. */
export type FoundCode =
  /** `key` names it in the store, `code` is what was typed. */
  | { readonly kind: 'walk'; readonly key: string; readonly code: string; readonly walk: WalkRecord }
  /** The walk in which it was typed. */
  | { readonly kind: 'own' }
  /** Mistyped, used or over. */
  | { readonly kind: 'none' }
  /** Too many wrong ones in a short time. */
  | { readonly kind: 'later' }
  /** Codes are taken in another way here. */
  | { readonly kind: 'elsewhere' };

/** Passes walks from one person to another. Not its business: what is asked and said. */
export interface HandOvers {
  readonly terms: () => HandOverTerms;
  /** Leaves a walk under a code, the same as before while nobody took it; what waited is brought up to date. */
  readonly leave: (record: WalkRecord, to: HandOverTo) => Promise<LeftWalk>;
  /** Brings what still waits up to date; whether nothing old waits any more. */
  readonly renew: (record: WalkRecord) => Promise<boolean>;
  /** Takes back what waits from an erased walk; whether nothing of it waits any more. */
  readonly withdraw: (walk: WalkId) => Promise<boolean>;
  /** What a text leads to, when it has the form of a code; `asker` is the walk in which it was written. */
  readonly find: (text: string, asker: WalkId) => Promise<FoundCode | undefined>;
}

import type { HandOverTerms, HandOverTo } from '../hand-over/terms.ts';

/** What is asked at the start of a call, besides the questions about the house. */
export const openingAsks = ['where', 'ground', 'consent', 'number'] as const;
export type OpeningAsk = (typeof openingAsks)[number];

/** A call that a volunteer guides: what concerns the call and not the house. */
export interface CallState {
  /** On whose behalf; nothing: as the flow says. */
  readonly behalf?: string;
  /** When it began, moved on by the time for which it was interrupted; ISO 8601, UTC. */
  readonly since: string;
  /** What of the opening was asked already. */
  readonly opened: readonly OpeningAsk[];
  /** How many minutes the whole call may take; nothing: no limit. */
  readonly minutes?: number;
  /** To call back when the line drops; stands here only, and is erased when the call is closed. */
  readonly callBack?: string;
  /** How the call can be passed on to somebody else, as the channel said at this turn; nothing: it cannot. */
  readonly handsOver?: HandOverTerms;
  /** Somebody else began it, and the one who guides now has said nothing yet. */
  readonly takenOver?: true;
  /** The caller was asked whether they want to go on alone. */
  readonly asked?: true;
  /** For whom there is a code, and since when: a code is made from it, so that no two calls have the same. */
  readonly left?: Readonly<Partial<Record<HandOverTo, string>>>;
  /** Something of this walk was left for somebody, also for an earlier caller. */
  readonly wasLeft?: true;
  /** Seconds that the questions usually take which somebody else asked before. */
  readonly usualBefore?: number;
}

import type { Ask, Message, Progress } from '../conversation/message.ts';
import type { WalkRecord } from '../conversation/record.ts';
import type { Values } from '../wording/say.ts';
import type { WordedReply } from '../wording/worded.ts';

/** A guided call on the screen. */
export interface CallOnScreen {
  /** When it began, without the time for which it was interrupted; ISO 8601, UTC. */
  readonly since: string;
  /** How many minutes it may take. */
  readonly minutes?: number;
  /** The key that brings the line to read out when the caller starts something unsafe. */
  readonly stopKey: string;
}

/** One reply, in words, with what the screen needs besides them. */
export interface Turn {
  readonly worded: WordedReply;
  readonly phase: WalkRecord['cursor']['phase'];
  readonly progress: Progress;
  /** Goes with a choice made by arrow keys, so that the conversation knows which reply showed it. */
  readonly revision: number;
  readonly ask?: Ask;
  /** The report as text, in lines of the width of the terminal. */
  readonly report?: string;
  /** Which part of the drawing belongs to the stop; the id of the stop when it is not said. */
  readonly drawing?: string;
  readonly call?: CallOnScreen;
}

/**
 * The conversation as a terminal sees it. A turn that was returned is kept. Not the terminal's business:
 * what answers mean, what is asked next, where walks are stored.
 */
export interface TerminalConversation {
  readonly hello: () => Promise<Turn>;
  readonly send: (message: Message) => Promise<Turn>;
}

/** Says a text of the flow, `terminal.*` or the title of a stop, in the reader's language. */
export type Phrase = (id: string, values?: Values) => string;

/** How a conversation in the terminal ended; each is a clean end with all answers kept. */
export type TerminalEnd = 'finished' | 'paused' | 'emergency';

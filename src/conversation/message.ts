import type { AnswerKey } from '../answers/answer.ts';
import type { QuestionKind } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import type { Say, TextId } from '../wording/say.ts';
import type { HandOverTo } from './hand-over/terms.ts';
import type { Cursor } from './record.ts';

/** What a channel hands to the conversation. */
export type Message =
  /** A person arrives or comes back: say where the walk stands. */
  | { readonly kind: 'hello' }
  | { readonly kind: 'text'; readonly text: string }
  /** The emergency key of a channel. */
  | { readonly kind: 'emergency' }
  /** A word that the carriers of a channel reserve: no more messages, or who is this; hello asks for messages again. */
  | { readonly kind: 'carrier'; readonly word: 'stop' | 'help' }
  /** A press on a choice shown earlier; `revision` is that of the reply that showed it. */
  | { readonly kind: 'choose'; readonly key: AnswerKey; readonly option: string; readonly revision: number };

/** How a part of a reply is meant; a channel decides how it looks. */
export type Tone = 'plain' | 'heading' | 'quiet' | 'warning' | 'emergency';

export type Part =
  | ({ readonly kind: 'say'; readonly tone: Tone } & Say)
  /** The answers of one stop, short, read back before the list. */
  | { readonly kind: 'readBack'; readonly stop: string; readonly lines: readonly Say[] }
  /** Here the report belongs: made from the record, in the channel's own format. */
  | { readonly kind: 'report' };

/** A choice that is offered, with the number (0: none, where a number is a measure) and letter by which it can be taken. */
export interface Choice {
  readonly id: string;
  readonly number: number;
  readonly letter: string;
  readonly label: Say;
}

/** The question that is now asked. */
export interface Ask {
  readonly key: AnswerKey;
  readonly question: string;
  readonly kind: QuestionKind;
  readonly say: Say;
  readonly choices: readonly Choice[];
  /** Several choices may be given. */
  readonly several: boolean;
  /** By side: the sides that still need an answer. */
  readonly sides: readonly Side[];
  /** A short line on how to answer. */
  readonly hint: Say;
  /** For a volunteer, whose `say` is to be read aloud: what to listen for, and what to do if the caller cannot tell. */
  readonly guide?: { readonly listen: Say; readonly cannotTell: Say };
}

/** What the conversation hands back: ids and values, never finished sentences. */
export interface Reply {
  readonly parts: readonly Part[];
  readonly ask?: Ask;
  readonly phase: Cursor['phase'];
  readonly progress: Progress;
  readonly revision: number;
  /** The walk is left for somebody else, or what was left brought up to date; what became of that is told with the parts. */
  readonly handsOver?: HandOverTo | 'renew';
}

/** How far the walk is. */
export interface Progress {
  readonly stop: string | undefined;
  readonly stops: readonly {
    readonly id: string;
    readonly title: TextId;
    readonly state: 'done' | 'here' | 'ahead';
  }[];
  readonly answered: number;
  readonly asked: number;
}

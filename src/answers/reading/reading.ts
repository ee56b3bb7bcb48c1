import type { Flow, Question } from '../../flow/flow.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { Stop } from '../../flow/schema/file.ts';
import type { Words } from '../../flow/schema/words.ts';
import type { NotReadReason, UnitId } from '../../quantities/index.ts';
import type { Answer } from '../answer.ts';

/** What a message is read against. Everything in it is compared by identity, so pass the flow's own objects. */
export interface ReadingContext {
  /** The question being asked; none before the first and after the last. */
  readonly question: Question | undefined;
  readonly words: Words;
  readonly stops: readonly Stop[];
  /** All questions of the flow. */
  readonly questions: readonly Question[];
  readonly groups: Flow['groups'];
  /** The sides asked about, in the order in which they are shown. */
  readonly sides: readonly Side[];
  readonly units: 'imperial' | 'metric';
  /** The current keys of the group that a count question counts. */
  readonly members: readonly string[];
  /** Every key of that group that was ever given out, so that none is used twice; `members` when missing. */
  readonly usedMembers?: readonly string[];
  /** What stands on the sheet for this question, for "the same on the other sides". */
  readonly before?: Answer;
}

export type Command =
  | 'back'
  | 'help'
  | 'why'
  | 'pause'
  | 'where'
  | 'startOver'
  | 'finish'
  | 'stop'
  | 'forget';

/** What a reader should be told about how an answer was taken. */
export interface ReadingNote {
  /** A bare number was taken in this unit. */
  readonly assumedUnit?: UnitId;
  /** A range was said, in base units; the answer holds its unsafe end. */
  readonly range?: { readonly low: number; readonly high?: number };
  readonly approximate?: boolean;
  readonly guessed?: 'from misspelling';
  /** By side: the sides asked about that the message says nothing of. */
  readonly missing?: readonly Side[];
  /** By side: sides that were named but are not asked about; nothing is stored for them. */
  readonly notAsked?: readonly Side[];
  /** A text was cut to this many characters. */
  readonly cutTo?: number;
}

/** Why a message was not understood, with the values a friendly line needs; measures are in base units. */
export type ReadingProblem =
  | { readonly code: 'empty' }
  /** There is no question to answer now. */
  | { readonly code: 'noQuestion' }
  /** No option is meant by it. */
  | { readonly code: 'noMatch' }
  /** It may mean any of `nearest`. */
  | { readonly code: 'ambiguous' }
  /** Several were named where one is wanted: `nearest` holds them. */
  | { readonly code: 'oneOnly' }
  /** It only says what is not so. */
  | { readonly code: 'onlyNegated' }
  /** An option that stands alone was named together with others: `nearest` holds all. */
  | { readonly code: 'standsAlone' }
  | { readonly code: 'noSuchNumber'; readonly number: number; readonly last: number }
  /** Sides were named without a value. */
  | { readonly code: 'valueMissing'; readonly sides: readonly Side[] }
  /** It cannot be told which value belongs to which side. */
  | { readonly code: 'mixedSides' }
  | { readonly code: 'sideTwice'; readonly side: Side }
  | { readonly code: 'sideNotAsked'; readonly sides: readonly Side[] }
  | { readonly code: 'notAMeasure'; readonly reason: NotReadReason; readonly detail?: string }
  | { readonly code: 'outside'; readonly value: number; readonly min?: number; readonly max?: number }
  | { readonly code: 'notWhole'; readonly value: number }
  | { readonly code: 'tooMany'; readonly count: number; readonly max: number }
  | { readonly code: 'unknownStop'; readonly said: string; readonly stops: readonly string[] }
  | { readonly code: 'unknownQuestion'; readonly said: string; readonly questions: readonly string[] };

/** What a message says. */
export type Reading =
  /** `sure: false` is met with one short question. */
  | { readonly kind: 'emergency'; readonly sure: boolean; readonly matched: string }
  | { readonly kind: 'command'; readonly command: Command }
  | { readonly kind: 'jump'; readonly stop: string }
  /** Neither stop nor question: "change an answer" and no more. */
  | { readonly kind: 'change'; readonly stop?: string; readonly question?: string }
  /** Without a member: the one being talked about. */
  | { readonly kind: 'remove'; readonly group?: string; readonly member?: string }
  | { readonly kind: 'answer'; readonly answer: Answer; readonly note?: ReadingNote }
  | NotUnderstood;

export interface NotUnderstood {
  readonly kind: 'notUnderstood';
  readonly problem: ReadingProblem;
  /** Option ids that may be meant, the likeliest first. */
  readonly nearest?: readonly string[];
}

/** A reading that answers the question, or says why it does not. */
export type AnswerReading = Extract<Reading, { kind: 'answer' }> | NotUnderstood;

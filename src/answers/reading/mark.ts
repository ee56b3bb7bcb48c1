import type { Side } from '../../flow/schema/base.ts';

/** What a word or phrase does in an answer. */
export type Role =
  /** Names options; more than one id when the phrase fits several. */
  | 'option'
  /** A word that stands in the labels or words of these options. */
  | 'hint'
  | 'number'
  | 'ordinal'
  | 'letter'
  | 'sides'
  | 'allSides'
  | 'rest'
  | 'yes'
  | 'no'
  | 'echoYes'
  | 'echoNo'
  | 'guessYes'
  | 'guessNo'
  | 'none'
  /** "And nothing else": none, unless something is named beside it. */
  | 'nothingElse'
  | 'all'
  | 'notSure'
  | 'skip'
  | 'same'
  | 'except'
  | 'and'
  | 'or'
  | 'negator'
  | 'guess'
  | 'told'
  /** "If", "sometimes": what is said holds on terms. */
  | 'terms'
  | 'to'
  | 'comma'
  | 'stop'
  | 'colon'
  | 'slash'
  | 'filler'
  | 'word';

/** A role before it is placed in a message. */
export interface Meaning {
  readonly role: Role;
  readonly ids?: readonly string[];
  readonly sides?: readonly Side[];
  readonly value?: number;
}

/** A word or phrase of a message with its role, and the characters it covers. */
export interface Mark extends Meaning {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly misspelt?: boolean;
}

const PARTING: ReadonlySet<Role> = new Set(['comma', 'stop', 'colon', 'slash', 'and', 'or', 'to']);
const QUIET: ReadonlySet<Role> = new Set(['filler', 'guess', 'told']);

/** Parts two things, and means nothing by itself. */
export const isParting = (mark: Mark): boolean => PARTING.has(mark.role);
/** Changes nothing in what is meant. */
export const isQuiet = (mark: Mark): boolean => QUIET.has(mark.role);
/** The marks that carry meaning. */
export const meaningOf = (marks: readonly Mark[]): readonly Mark[] =>
  marks.filter((mark) => !PARTING.has(mark.role) && !QUIET.has(mark.role));

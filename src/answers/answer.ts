import type { Side } from '../flow/schema/base.ts';

/** A value in base units: option ids, metres for lengths, percent for slopes, sides, members' keys, or text. */
export type AnswerValue = string | number | readonly string[];

/** How the person knows it: seen with own eyes, told by someone, or a guess. */
export type KnownHow = 'seen' | 'told' | 'guess';

/** An answer to one question about one thing. Not answered at all is `undefined`, a fourth case. */
export type PlainAnswer =
  | { readonly status: 'given'; readonly value: AnswerValue; readonly said?: string; readonly how?: KnownHow }
  | { readonly status: 'notSure' }
  | { readonly status: 'skipped' };

/** An answer by side: each side has a status of its own; a side that is not there was not answered. */
export interface BySideAnswer {
  readonly status: 'bySide';
  readonly sides: Readonly<Partial<Record<Side, PlainAnswer>>>;
}

export type Answer = PlainAnswer | BySideAnswer;

/** `roof.covering`, or `trees/t2/trees.height` for a member: group, permanent key, question. */
export type AnswerKey = string;

/** All answers of a walk: the one truth from which everything else is worked out. */
export type AnswerSheet = Readonly<Record<AnswerKey, Answer>>;

/** Where an answer stands on the sheet. */
export function answerKey(questionId: string, group?: string, member?: string): AnswerKey {
  return group === undefined || member === undefined ? questionId : `${group}/${member}/${questionId}`;
}

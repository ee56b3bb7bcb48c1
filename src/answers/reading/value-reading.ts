import type { Answer, KnownHow, PlainAnswer } from '../answer.ts';
import type { Mark } from './mark.ts';
import type { ReadingNote, ReadingProblem } from './reading.ts';

/** One value read from a message or from the part of it that belongs to a side. */
export interface ReadValue<A extends Answer = PlainAnswer> {
  readonly kind: 'value';
  readonly answer: A;
  /** Nothing was left over that is not understood. */
  readonly strict: boolean;
  readonly note?: ReadingNote;
}

export interface NoValue {
  readonly kind: 'noValue';
  readonly problem: ReadingProblem;
  readonly nearest?: readonly string[];
}

export type ValueReading = ReadValue | NoValue;

export const noValue = (problem: ReadingProblem, nearest?: readonly string[]): NoValue =>
  nearest === undefined || nearest.length === 0
    ? { kind: 'noValue', problem }
    : { kind: 'noValue', problem, nearest };

/** How the person knows it, from the words round the answer; nothing when it was plainly said. */
export function howKnown(marks: readonly Mark[]): { readonly how?: KnownHow } {
  if (marks.some((mark) => mark.role === 'told')) return { how: 'told' };
  const unsure = marks.some(
    ({ role }) => role === 'guess' || role === 'guessYes' || role === 'guessNo' || role === 'notSure',
  );
  return unsure ? { how: 'guess' } : {};
}

/** Not sure or skipped, when a message says that and nothing else that means anything. */
export function statusOnly(meaning: readonly Mark[]): ReadValue | undefined {
  if (meaning.length === 0) return undefined;
  if (meaning.every((mark) => mark.role === 'skip'))
    return { kind: 'value', answer: { status: 'skipped' }, strict: true };
  const open = meaning.filter((mark) => mark.role !== 'letter');
  if (open.length > 0 && open.every((mark) => mark.role === 'notSure'))
    return { kind: 'value', answer: { status: 'notSure' }, strict: true };
  return undefined;
}

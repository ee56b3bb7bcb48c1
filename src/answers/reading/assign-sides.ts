import type { Side } from '../../flow/schema/base.ts';
import type { PlainAnswer } from '../answer.ts';
import type { ReadingNote } from './reading.ts';
import type { SideSelection } from './side-items.ts';
import { type NoValue, noValue, type ReadValue } from './value-reading.ts';

/** A value that has been read, with the sides it holds for. */
export interface Assignment {
  readonly selection: SideSelection;
  readonly value: ReadValue;
}

/** What each side was given, and the sides that were named but are not asked about. */
export interface Assigned {
  readonly sides: Readonly<Partial<Record<Side, PlainAnswer>>>;
  readonly notAsked: readonly Side[];
  readonly strict: boolean;
  readonly note: ReadingNote;
}

const sameAnswer = (first: PlainAnswer, second: PlainAnswer): boolean =>
  first.status === second.status &&
  (first.status !== 'given' ||
    second.status !== 'given' ||
    JSON.stringify(first.value) === JSON.stringify(second.value));

/** Notes of several values as one; the first range and unit stand for all. */
function joinNotes(values: readonly ReadValue[]): ReadingNote {
  return Object.assign({}, ...values.map((value) => value.note ?? {}).reverse());
}

/**
 * Gives each side its value: named sides first, then the rest of those asked about. Sides in `changeable` take a value
 * only when they are named.
 */
export function assignSides(
  assignments: readonly Assignment[],
  asked: readonly Side[],
  changeable: readonly Side[] = [],
): Assigned | NoValue {
  const sides: Partial<Record<Side, PlainAnswer>> = {};
  const notAsked = new Set<Side>();
  for (const { selection, value } of assignments) {
    for (const side of selection.sides) {
      const before = sides[side];
      if (!asked.includes(side) && !changeable.includes(side)) notAsked.add(side);
      else if (before !== undefined && !sameAnswer(before, value.answer))
        return noValue({ code: 'sideTwice', side });
      else sides[side] = value.answer;
    }
  }
  const wide = assignments.filter(({ selection }) => selection.all || selection.rest);
  const [first, ...others] = wide;
  if (first !== undefined && others.some((one) => !sameAnswer(one.value.answer, first.value.answer)))
    return noValue({ code: 'mixedSides' });
  if (first !== undefined) for (const side of asked) sides[side] ??= first.value.answer;
  if (Object.keys(sides).length === 0 && notAsked.size > 0)
    return noValue({ code: 'sideNotAsked', sides: [...notAsked] });
  return {
    sides,
    notAsked: [...notAsked],
    strict: assignments.every(({ value }) => value.strict),
    note: joinNotes(assignments.map(({ value }) => value)),
  };
}

import type { Side } from '../../flow/schema/base.ts';
import type { Answer, PlainAnswer } from '../answer.ts';
import type { Assignment } from './assign-sides.ts';
import { type Mark, meaningOf } from './mark.ts';
import { namesPlaces } from './pick-by-place.ts';
import { measuredKinds } from './prepare-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { type Part, readValue } from './read-value.ts';
import type { ReadingContext } from './reading.ts';
import type { ClauseRules, SideClauses } from './side-clauses.ts';
import type { SideSelection } from './side-items.ts';
import { howKnown, type NoValue, noValue, type ReadValue } from './value-reading.ts';
import { valuesInTurn } from './values-in-turn.ts';

/** What an answer by side is read with. */
export interface SideReader {
  readonly prepared: PreparedQuestion;
  readonly context: ReadingContext;
  readonly asked: readonly Side[];
  readonly rules: ClauseRules;
  readonly marks: readonly Mark[];
}

/** All sides asked about. */
export const everySide: SideSelection = { sides: [], all: true, rest: false };
/** All that are not named. */
export const otherSides: SideSelection = { sides: [], all: false, rest: true };

/** A plain yes or no of a side. */
export const plainYesNo = (value: 'yes' | 'no', how: ReturnType<typeof howKnown> = {}): ReadValue => ({
  kind: 'value',
  answer: { status: 'given', value, ...how },
  strict: true,
});

/** The one value that stands on the sheet for this question already. */
function valueBefore(before: Answer | undefined): PlainAnswer | undefined {
  if (before === undefined) return undefined;
  if (before.status !== 'bySide') return before;
  const given = Object.values(before.sides).filter((answer) => answer.status === 'given');
  const [first] = given;
  return first !== undefined &&
    given.every((one) => JSON.stringify(one.value) === JSON.stringify(first.value))
    ? first
    : undefined;
}

function readPart(part: Part, reader: SideReader, previous: ReadValue | undefined): ReadValue | NoValue {
  const meaning = meaningOf(part.marks);
  if (meaning.length > 0 && meaning.every((mark) => mark.role === 'same')) {
    if (previous !== undefined) return previous;
    const before = valueBefore(reader.context.before);
    return before === undefined
      ? noValue({ code: 'valueMissing', sides: reader.asked })
      : { kind: 'value', answer: before, strict: true };
  }
  return readValue(part, reader.prepared, reader.context);
}

/** The values of sides that were named with them. */
export function readPairs(clauses: SideClauses, reader: SideReader): Assignment[] | NoValue {
  const assignments: Assignment[] = [];
  for (const { selection, part } of clauses.pairs) {
    const value = readPart(part, reader, assignments.at(-1)?.value);
    if (value.kind === 'noValue') return value;
    assignments.push({ selection, value });
  }
  return assignments;
}

/** "2 1 1 1", "20 30 none 70": one part that holds a value for each side; as it is when it does not. */
function partsInTurn(parts: readonly Part[], { asked, context, prepared }: SideReader): readonly Part[] {
  const [only] = parts;
  if (parts.length !== 1 || only === undefined) return parts;
  const { kind } = prepared.question;
  const numbers = only.marks.filter((mark) => mark.role === 'number');
  if (kind === 'choice' && namesPlaces(only.marks) && numbers.length === asked.length && numbers.length > 1)
    return numbers.map((mark) => ({ marks: [mark], text: mark.text }));
  if (kind !== 'choice' && !measuredKinds.has(kind)) return parts;
  const turns = valuesInTurn(only, asked.length, context) ?? parts;
  // "Twenty five" and "10, not sure" are one value for two sides.
  const whole = turns.length > 1 ? readValue(only, prepared, context) : undefined;
  const single = whole?.kind === 'value' && (turns.length === 2 || whole.answer.status === 'given');
  return single ? parts : turns;
}

/** Values without sides: one for each side in turn, or one for all that are not named. */
export function readSpread(clauses: SideClauses, reader: SideReader, sided: boolean): Assignment[] | NoValue {
  const { asked } = reader;
  const parts = sided ? clauses.spread : partsInTurn(clauses.spread, reader);
  if (!sided && parts.length > 1 && parts.length !== asked.length) return tooManyValues(parts, reader);
  if (sided && parts.length > 1) return noValue({ code: 'mixedSides' });
  // "2 at the back" counts what is there; a number without a side says nothing of the sides.
  if (reader.rules.namingIsYes && parts.some((part) => namesPlaces(part.marks)))
    return noValue({ code: 'noMatch' });
  const assignments: Assignment[] = [];
  for (const [index, part] of parts.entries()) {
    const value = readPart(part, reader, assignments.at(-1)?.value);
    if (value.kind === 'noValue') return value;
    const side = asked[index];
    const own =
      parts.length > 1 && side !== undefined ? { sides: [side], all: false, rest: false } : otherSides;
    assignments.push({ selection: own, value });
  }
  return assignments;
}

/** "Wood, it is old": all parts together may still be one value. */
function tooManyValues(parts: readonly Part[], reader: SideReader): Assignment[] | NoValue {
  const marks = parts.flatMap((part) => [
    ...part.marks,
    { role: 'comma', text: ',', start: 0, end: 0 } as const,
  ]);
  const value = readValue(
    { marks, text: parts.map((part) => part.text).join(', ') },
    reader.prepared,
    reader.context,
  );
  return value.kind === 'value' ? [{ selection: otherSides, value }] : value;
}

/** "Left or right" leaves open which of them it is. */
function leavesOpen(marks: readonly Mark[]): boolean {
  const loud = marks.filter((mark) => mark.role !== 'filler');
  return loud.some((mark, at) => mark.role === 'or' && loud[at - 1]?.sides && loud[at + 1]?.sides);
}

/** Sides named without a value: a yes, or the value given before. */
export function readListed(clauses: SideClauses, reader: SideReader, sided: boolean): Assignment[] | NoValue {
  const { listed } = clauses;
  if (listed === undefined) return [];
  const marks = reader.marks.filter((mark) => mark.role !== 'notSure');
  if (reader.rules.namingIsYes && leavesOpen(reader.marks)) return noValue({ code: 'mixedSides' });
  if (reader.rules.namingIsYes) return [{ selection: listed, value: plainYesNo('yes', howKnown(marks)) }];
  const before = valueBefore(reader.context.before);
  const isAsked = listed.all || listed.sides.some((side) => reader.asked.includes(side));
  if (before !== undefined && isAsked)
    return [{ selection: listed, value: { kind: 'value', answer: before, strict: true } }];
  return sided ? [] : noValue({ code: 'valueMissing', sides: listed.all ? reader.asked : listed.sides });
}

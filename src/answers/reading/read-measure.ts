import { readBound } from '../../flow/bound.ts';
import {
  type NotReadReason,
  type NumberWords,
  readLength,
  readNumber,
  readSlope,
  readYear,
  type UnitId,
} from '../../quantities/index.ts';
import { type Mark, meaningOf } from './mark.ts';
import { heardWrong, measureText, notOneLength } from './measure-text.ts';
import { numberWordsOf } from './number-words-of.ts';
import { isMultiplied, type Look, pickByLook } from './pick-by-look.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import type { ReadingContext, ReadingNote } from './reading.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { howKnown, type NoValue, noValue, type ValueReading } from './value-reading.ts';

interface Measured {
  readonly value: number;
  readonly approximate: boolean;
  readonly range?: { readonly low: number; readonly high?: number };
  readonly assumedUnit?: UnitId;
}

type Unread = { readonly reason: NotReadReason; readonly detail?: string };

/** Wide enough that the question's own bounds are what refuses a value. */
const MOST_METRES = 1e6;
const MOST_PERCENT = 1e5;
const LAST_YEAR = 2100;

const rangeOf = (low: number, high: number | undefined) => ({
  range: high === undefined ? { low } : { low, high },
});

function measureLength(text: string, context: ReadingContext, words: NumberWords): Measured | Unread {
  const { question, units } = context;
  const reason = notOneLength(text);
  if (reason !== undefined) return { reason };
  const unit = question?.bare?.[units] ?? (units === 'metric' ? 'm' : 'ft');
  const read = readLength(text, {
    unit,
    unsafeEnd: question?.unsafeEnd ?? 'low',
    mostMetres: MOST_METRES,
    words,
  });
  if (read.kind === 'notALength') return read;
  return {
    value: read.metres,
    approximate: read.approximate,
    ...(read.kind === 'range' ? rangeOf(read.lowMetres, read.highMetres) : {}),
    ...(read.assumedUnit === undefined ? {} : { assumedUnit: read.assumedUnit }),
  };
}

function measureSlope(text: string, words: NumberWords): Measured | Unread {
  const read = readSlope(text, { mostPercent: MOST_PERCENT, words });
  if (read.kind === 'notASlope') return read;
  const assumed = read.assumedUnit === undefined ? {} : { assumedUnit: read.assumedUnit };
  return { value: read.percent, approximate: read.approximate || read.kind === 'range', ...assumed };
}

/** A year before the first or after the last that makes sense is read all the same, so that it can be named. */
function yearOutside(text: string, unread: Unread, words: NumberWords): Measured | Unread {
  if (unread.reason !== 'tooSmall' && unread.reason !== 'tooLarge') return unread;
  const read = readNumber(text, { unsafeEnd: 'low', words });
  return read.kind === 'notANumber' ? unread : { value: read.value, approximate: false };
}

const DECADE_WORD = new RegExp(`\\b(${Object.keys(ENGLISH_TALK_WORDS.decades).join('|')})\\b`, 'gi');

function measureNumber(text: string, context: ReadingContext, words: NumberWords): Measured | Unread {
  const isYear = context.question?.role === 'yearBuilt';
  const plain = text.replace(DECADE_WORD, (word) => ENGLISH_TALK_WORDS.decades[word.toLowerCase()] ?? word);
  const first = isYear ? { least: boundOf(context, 'min') ?? 0 } : {};
  // The older end of a year is the unsafe one: older paint, boards and windows.
  const read = isYear
    ? readYear(plain, { unsafeEnd: 'low', most: boundOf(context, 'max') ?? LAST_YEAR, words, ...first })
    : readNumber(plain, { unsafeEnd: 'high', words });
  if (read.kind === 'notANumber') return isYear ? yearOutside(plain, read, words) : read;
  const range = read.kind === 'range' ? rangeOf(read.low, read.high) : {};
  return { value: read.value, approximate: read.approximate, ...range };
}

function boundOf({ question }: ReadingContext, key: 'min' | 'max'): number | undefined {
  const written = question?.[key];
  const bound =
    written === undefined || question === undefined ? undefined : readBound(written, question.kind);
  return typeof bound === 'number' ? bound : undefined;
}

function measure(text: string, context: ReadingContext): Measured | Unread {
  const words = numberWordsOf(context.words);
  switch (context.question?.kind) {
    case 'length':
      return measureLength(text, context, words);
    case 'slope':
      return measureSlope(text, words);
    default:
      return measureNumber(text, context, words);
  }
}

/** "Across the street, about 60 feet": a measure beside a pick is what counts. */
function measureWithin(text: string, marks: readonly Mark[], context: ReadingContext): Measured | Unread {
  const read = measure(text, context);
  const named = marks.filter((mark) => mark.role === 'option');
  if ('value' in read || named.length === 0 || !marks.some((mark) => mark.role === 'number')) return read;
  if (isMultiplied(marks)) return { reason: 'notUnderstood' };
  const rest = named
    .reduce((left, mark) => left.replace(mark.text, ' '), text)
    .replace(/^[\s,]+|[\s,]+$/g, '');
  const within = measure(rest, context);
  return 'value' in within ? within : read;
}

/** A little more than the difference that rounding makes between units. */
const EDGE = 1e-9;

function bounds(context: ReadingContext): { readonly min?: number; readonly max?: number } {
  const min = boundOf(context, 'min');
  const max = boundOf(context, 'max');
  return { ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) };
}

function outside(value: number, context: ReadingContext): NoValue | undefined {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = bounds(context);
  if (value >= min - EDGE && value <= max + EDGE) return undefined;
  return noValue({ code: 'outside', value, ...bounds(context) });
}

function unread({ reason, detail }: Unread): NoValue {
  return noValue({ code: 'notAMeasure', reason, ...(detail === undefined ? {} : { detail }) });
}

/** A pick by its letter or by "option 2"; a bare number is a measure. */
function pickByPlace(marks: readonly Mark[], text: string, prepared: PreparedQuestion): number | undefined {
  // "No. 3" is a number, not a no.
  const meaning = meaningOf(marks).filter((mark) => mark.role !== 'no' || !/^no\./i.test(text));
  const ordinal = meaning.find((mark) => mark.role === 'ordinal');
  const [only, ...more] = ordinal ? meaning.filter((mark) => mark.text !== 'one') : meaning;
  if (only === undefined || more.length > 0) return undefined;
  const lettered = only.role === 'letter' || only.role === 'ordinal';
  const numbered =
    only.role === 'number' && /^(?:option|pick|choice|number|no\.?|#)\s*\w+\W*$|^\w+\)$/i.test(text);
  if (!lettered && !numbered) return undefined;
  const place = only.value === -1 ? prepared.options.length : (only.value ?? 0);
  return prepared.options[place - 1]?.value;
}

function wholePick(marks: readonly Mark[]): boolean {
  const meaning = meaningOf(marks);
  return meaning.length === 1 && meaning[0]?.role === 'option' && meaning[0].ids?.length === 1;
}

const noteOf = (read: Measured, text: string): ReadingNote => ({
  ...(read.assumedUnit === undefined ? {} : { assumedUnit: read.assumedUnit }),
  ...(read.range === undefined ? {} : { range: read.range }),
  ...(read.approximate ? { approximate: true } : {}),
  ...(heardWrong(text) ? { guessed: 'from misspelling' as const } : {}),
});

const rangeNote = ({ range }: Look): ReadingNote => (range === undefined ? {} : { range });

/** Reads a length, slope, number or year from the words of a message, or a pick by its look. */
export function readMeasureValue(
  marks: readonly Mark[],
  text: string,
  prepared: PreparedQuestion,
  context: ReadingContext,
): ValueReading {
  const said = text.trim();
  const given = (value: number, note: ReadingNote, how: Pick<ReturnType<typeof howKnown>, 'how'>) =>
    ({
      kind: 'value',
      answer: { status: 'given', value, said, ...how },
      strict: true,
      ...(Object.keys(note).length === 0 ? {} : { note }),
    }) as const;
  const placed = pickByPlace(marks, said, prepared);
  if (placed !== undefined) return given(placed, {}, {});
  const look = pickByLook(marks, said, prepared, context);
  if (wholePick(marks) && look !== undefined && 'value' in look)
    return given(look.value, rangeNote(look), howKnown(marks));
  const read = measureWithin(measureText(said), marks, context);
  if ('value' in read)
    return outside(read.value, context) ?? given(read.value, noteOf(read, said), howKnown(marks));
  if (look === undefined) return unread(read);
  if (!('value' in look)) return look;
  const guessed = marks.some((mark) => mark.misspelt) ? { guessed: 'from misspelling' as const } : {};
  return given(look.value, { ...guessed, ...rangeNote(look) }, howKnown(marks));
}

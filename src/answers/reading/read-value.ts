import { isQuiet, type Mark, meaningOf } from './mark.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { readCount } from './read-count.ts';
import { readMeasureValue } from './read-measure.ts';
import { readOptions } from './read-options.ts';
import { readYesNo } from './read-yes-no.ts';
import type { ReadingContext } from './reading.ts';
import { noValue, statusOnly, type ValueReading } from './value-reading.ts';

/** A message, or the part of it that belongs to some sides: its marks and its words. */
export interface Part {
  readonly marks: readonly Mark[];
  readonly text: string;
}

function readGiven(part: Part, prepared: PreparedQuestion, context: ReadingContext): ValueReading {
  const { marks, text } = part;
  switch (prepared.question.kind) {
    case 'choice':
      return readOptions(marks, prepared, false);
    case 'several':
      return readOptions(marks, prepared, true);
    case 'yesNo':
    case 'sides':
      return readYesNo(marks, prepared);
    case 'length':
    case 'number':
    case 'slope':
      return readMeasureValue(marks, text, prepared, context);
    case 'count':
      return readCount(marks, text, context);
    case 'text':
      return { kind: 'value', answer: { status: 'given', value: text }, strict: true };
    default:
      return prepared.question.kind satisfies never;
  }
}

/** "No, well, maybe", "no, I can't tell": what is said last takes the no back. */
function takesBack(marks: readonly Mark[]): boolean {
  const no = marks.findIndex((mark) => mark.role === 'no' || mark.role === 'guessNo');
  const last = marks.findLastIndex((mark) => mark.role === 'notSure');
  return no >= 0 && no < last && marks.slice(last).every((mark) => isQuiet(mark) || mark.role === 'notSure');
}

/** The words of a mark as they stand in a text, apostrophes and all: "i don't know". */
const asTyped = ({ text }: Mark): RegExp =>
  new RegExp(
    [...text].map((sign) => (/\w/.test(sign) ? `${sign}'?` : sign === ' ' ? '\\s+' : `\\${sign}`)).join(''),
  );

const isNumber = (mark: Mark | undefined): boolean => mark?.role === 'number';

/** "2, maybe 3" is two or three. */
function betweenNumbers(hedge: Mark, { marks }: Part): boolean {
  const loud = marks.filter((mark) => !isQuiet(mark) && mark.role !== 'comma');
  const at = loud.indexOf(hedge);
  // The first of them may have its unit: "20 feet, maybe 25".
  const first = loud[at - 1]?.role === 'word' ? loud[at - 2] : loud[at - 1];
  return isNumber(first) && isNumber(loud[at + 1]);
}

/** "Not sure, maybe wood" is wood as a guess; "not sure about that" is not sure. */
function readHedged(part: Part, prepared: PreparedQuestion, context: ReadingContext): ValueReading {
  const hedges = part.marks.filter((mark) => mark.role === 'notSure');
  const marks = part.marks.filter((mark) => mark.role !== 'notSure');
  if (takesBack(part.marks)) return { kind: 'value', answer: { status: 'notSure' }, strict: false };
  let { text } = part;
  for (const hedge of hedges) {
    const found = asTyped(hedge).exec(text);
    if (found === null) continue;
    const before = text.slice(0, found.index);
    const after = text.slice(found.index + found[0].length);
    text = betweenNumbers(hedge, part) ? `${before.replace(/[\s,]+$/, '')} or${after}` : `${before} ${after}`;
  }
  const read = readGiven({ marks, text: text.replace(/^[\s,;.-]+|[\s,;.-]+$/g, '') }, prepared, context);
  const chosen = prepared.question.kind === 'choice' || prepared.question.kind === 'several';
  if (read.kind === 'value' && (read.strict || chosen) && read.answer.status === 'given')
    return { ...read, answer: { ...read.answer, how: read.answer.how ?? 'guess' } };
  return { kind: 'value', answer: { status: 'notSure' }, strict: false };
}

/** Reads one value for the question: given, not sure or skipped. */
export function readValue(part: Part, prepared: PreparedQuestion, context: ReadingContext): ValueReading {
  const meaning = meaningOf(part.marks);
  const status = statusOnly(meaning);
  if (status !== undefined) return status;
  if (meaning.length === 0) return readBare(part, prepared, context);
  if (meaning.some((mark) => mark.role === 'notSure')) return readHedged(part, prepared, context);
  return readGiven(part, prepared, context);
}

/** Signs and fillers only: a measure may still be in them (`~`), nothing else can. */
function readBare(part: Part, prepared: PreparedQuestion, context: ReadingContext): ValueReading {
  const { kind } = prepared.question;
  return kind === 'length' || kind === 'slope' || kind === 'number' || kind === 'count' || kind === 'text'
    ? readGiven(part, prepared, context)
    : noValue({ code: 'noMatch' });
}

import { isParting, type Mark } from './mark.ts';
import { numberWords, numberWordsOf } from './number-words-of.ts';
import { pickPart, splitParts } from './pick-options.ts';
import type { PreparedOption } from './prepare-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import type { ReadingContext } from './reading.ts';
import { type NoValue, noValue } from './value-reading.ts';

/** A measure known by its look, in base units; with a range when it was only compared: "wider than a finger". */
export interface Look {
  readonly value: number;
  readonly range?: { readonly low: number; readonly high?: number };
}

const AMOUNTS = [...numberWords.keys()].filter((word) => word !== 'one').join('|');
const TIMES = new RegExp(
  `(?:\\d|\\b(?:half|quarter|twice|double|triple|times|couple|few|several|many|dozen|${AMOUNTS}))(?: of| as)?(?: an?| the)?$`,
);
const AND_MORE = /^[\s,]*(?:and|plus) (?:an? )?(?:half|quarter|third|bit|little)\b/;
const ARTICLE = /(?: (?:an?|the|one|my|about))+$/;

/** The option marks that stand right behind a number: "two fingers" are not one. */
export const isMultiplied = (marks: readonly Mark[]): boolean =>
  marks.some((mark, at) => mark.role === 'option' && TIMES.test(marks[at - 1]?.text ?? ''));

type Comparison = 'less' | 'more' | undefined;

/** The words round a pick, as far as they compare with it: "less than a …", "a … or more". */
function comparisonIn(before: string, after: string, context: ReadingContext): Comparison {
  const words = numberWordsOf(context.words);
  const less = [...words.lessThan, ...words.atMost, ...words.nearly];
  const more = [...words.moreThan, ...words.atLeast, ...words.justOver];
  const longest = (list: readonly string[], fits: (phrase: string) => boolean) =>
    Math.max(0, ...list.filter(fits).map((phrase) => phrase.length));
  const lead = ` ${before}`.replace(ARTICLE, '');
  const ends = (phrase: string) => lead.endsWith(` ${phrase}`);
  const begins = (phrase: string) => /^or /.test(phrase) && after.startsWith(phrase);
  const [under, over] = [less, more].map((list) => longest(list, (one) => ends(one) || begins(one)));
  if (under === over || under === undefined || over === undefined) return undefined;
  return under > over ? 'less' : 'more';
}

/** An open end is taken this much beyond the pick, so that it lies on the side meant. */
const BEYOND = 0.01;

function compared(value: number, comparison: Comparison, context: ReadingContext): Look {
  if (context.question?.kind !== 'length' || comparison === undefined) return { value };
  const high = context.question.unsafeEnd === 'high';
  return comparison === 'less'
    ? { value: high ? value : 0, range: { low: 0, high: value } }
    : { value: high ? value * (1 + BEYOND) : value, range: { low: value } };
}

function optionNamed(
  marks: readonly Mark[],
  prepared: PreparedQuestion,
): PreparedOption | NoValue | undefined {
  const parts = splitParts(marks).map((part) => pickPart(part, prepared, false));
  const ids = [...new Set(parts.flatMap((part) => part.ids))];
  const [only] = ids;
  if (only === undefined || parts.some((part) => part.denied.length > 0)) return undefined;
  if (ids.length > 1) return noValue({ code: 'ambiguous' }, ids);
  return prepared.options.find((option) => option.id === only);
}

/** Reads a pick by its look: "a pencil", "less than a car length"; undefined when none is meant as it stands. */
export function pickByLook(
  marks: readonly Mark[],
  text: string,
  prepared: PreparedQuestion,
  context: ReadingContext,
): Look | NoValue | undefined {
  // Beside a number that could not be read the pick is not all that was said.
  const { numbers } = numberWordsOf(context.words);
  const counts = ({ role, text: word }: Mark) =>
    (role === 'number' && word !== 'one') || (role === 'word' && Object.hasOwn(numbers, word));
  if (marks.some(counts)) return undefined;
  const option = optionNamed(marks, prepared);
  if (option === undefined || 'kind' in option) return option;
  if (option.value === undefined) return undefined;
  const mark = marks.find((one) => !isParting(one) && one.ids?.includes(option.id));
  const at = mark === undefined ? -1 : text.indexOf(mark.text);
  if (mark === undefined || at < 0) return { value: option.value };
  const before = text.slice(0, at).trim();
  const after = text.slice(at + mark.text.length).trim();
  if (TIMES.test(before) || AND_MORE.test(after)) return undefined;
  return compared(option.value, comparisonIn(before, after, context), context);
}

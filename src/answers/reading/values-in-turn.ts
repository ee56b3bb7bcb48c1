import type { Mark } from './mark.ts';
import { numberWordsOf } from './number-words-of.ts';
import type { Part } from './read-value.ts';
import type { ReadingContext } from './reading.ts';

const LENGTHS = ['mm', 'cm', 'm', 'km', 'in', 'ft', 'yd', 'mi', 'percent', 'degree'] as const;
const TENS = /^(?:twenty|thirty|fou?rty|fifty|sixty|seventy|eighty|ninety)$/;
const UNITS_DIGIT = /^(?:one|two|three|four|five|six|seven|eight|nine)$/;

interface Lexicon {
  readonly isNumber: (mark: Mark) => boolean;
  readonly isUnit: (mark: Mark) => boolean;
}

function lexiconOf(context: ReadingContext): Lexicon {
  const { numbers, units } = numberWordsOf(context.words);
  const unitWords = new Set(LENGTHS.flatMap((unit) => units[unit] ?? []));
  return {
    isNumber: (mark) => mark.role === 'number' || Object.hasOwn(numbers, mark.text),
    isUnit: (mark) => unitWords.has(mark.text),
  };
}

const STANDING: ReadonlySet<Mark['role']> = new Set(['option', 'none', 'notSure', 'skip']);
const LEADING: ReadonlySet<Mark['role']> = new Set(['filler', 'guess', 'told']);

/** "Twenty five" is one number in two words. */
const continues = (mark: Mark, before: Mark | undefined): boolean =>
  before !== undefined && TENS.test(before.text) && UNITS_DIGIT.test(mark.text);

/** A value begins with a number or a phrase that stands for one; undefined when anything else is said. */
function cut(marks: readonly Mark[], { isNumber, isUnit }: Lexicon): Mark[][] | undefined {
  const chunks: Mark[][] = [];
  let lead: Mark[] = [];
  for (const mark of marks) {
    const open = chunks.at(-1);
    if (lead.length === 0 && open !== undefined && (isUnit(mark) || continues(mark, open.at(-1))))
      open.push(mark);
    else if (isNumber(mark) || STANDING.has(mark.role)) {
      chunks.push([...lead, mark]);
      lead = [];
    } else if (LEADING.has(mark.role)) lead.push(mark);
    else if (mark.role !== 'and' && mark.role !== 'comma') return undefined;
  }
  return lead.length === 0 ? chunks : undefined;
}

const isFoot = (mark: Mark | undefined): boolean => /^(?:ft|feet|foot)$/.test(mark?.text ?? '');
const isInch = (mark: Mark | undefined): boolean => /^(?:in|ins|inch|inches)$/.test(mark?.text ?? '');

/** "20 30 none 70": as many values in a row as there are sides, one for each; undefined when they are not. */
export function valuesInTurn(
  part: Part,
  count: number,
  context: ReadingContext,
): readonly Part[] | undefined {
  if (count < 2) return undefined;
  const chunks = cut(part.marks, lexiconOf(context));
  if (chunks?.length !== count) return undefined;
  // "2 ft 6 in" is one value.
  if (chunks.some((chunk, at) => isFoot(chunk.at(-1)) && isInch(chunks[at + 1]?.at(-1)))) return undefined;
  return chunks.map((marks) => ({ marks, text: marks.map((mark) => mark.text).join(' ') }));
}

import { type ReadNumber, readNumber } from '../../quantities/index.ts';
import { countThings } from './count-things.ts';
import { type Mark, meaningOf, type Role } from './mark.ts';
import { numberWordsOf } from './number-words-of.ts';
import type { ReadingContext } from './reading.ts';
import { stemsOf, tokenise } from './tokens.ts';
import { howKnown, noValue, type ValueReading } from './value-reading.ts';

/** Numbers as they are heard. */
const HEARD: ReadonlyMap<string, number> = new Map([
  ['to', 2],
  ['too', 2],
  ['for', 4],
  ['won', 1],
  ['ate', 8],
]);

type Group = ReadingContext['groups'][number];

const numberOf = (key: string): number => Number.parseInt(key.slice(1), 10) || 0;

/** So many keys: the first ones that are there are kept, new ones get numbers that were never used. */
export function countedMembers(
  count: number,
  group: Group,
  members: readonly string[],
  used: readonly string[] = members,
): readonly string[] {
  const highest = Math.max(0, ...[...members, ...used].map(numberOf));
  const added = Array.from(
    { length: Math.max(0, count - members.length) },
    (_, index) => `${group.keyLetter}${highest + index + 1}`,
  );
  return [...members.slice(0, count), ...added];
}

function withoutGroupWords(text: string, group: Group): string {
  const names = new Set([...stemsOf(group.one), ...stemsOf(group.many)]);
  return text
    .split(' ')
    .filter((word) => !stemsOf(word).some((stem) => names.has(stem)))
    .join(' ');
}

const NONE: ReadonlySet<Role> = new Set(['none', 'no', 'echoNo', 'guessNo', 'negator']);

/** A whole number for an open range: "at least 3" is three, "more than 3" four, "fewer than 3" two. */
function wholeOf(read: Exclude<ReadNumber, { kind: 'notANumber' }>, text: string): number {
  if (read.kind !== 'range') return read.value;
  if (read.high === undefined) return Math.floor(read.low) + (/\bmore than\b|\bover\b/.test(text) ? 1 : 0);
  return read.low === 0 && /\b(?:less|fewer) than\b|\bunder\b/.test(text) ? read.high - 1 : read.value;
}

function countIn(
  marks: readonly Mark[],
  text: string,
  context: ReadingContext,
  group: Group,
): number | undefined {
  const meaning = meaningOf(marks).filter((mark) => mark.role !== 'letter');
  const numbers = meaning.filter((mark) => mark.role === 'number');
  const plain = withoutGroupWords(text, group);
  const read = readNumber(plain, { unsafeEnd: 'high', words: numberWordsOf(context.words) });
  if (read.kind !== 'notANumber') return wholeOf(read, plain);
  const things = countThings(tokenise(text), group, context);
  if (things !== undefined) return things === 'unclear' ? undefined : things;
  const none = meaning.some((mark) => NONE.has(mark.role));
  if (none) return numbers.length === 0 ? 0 : undefined;
  return numbers.length === 1 ? numbers[0]?.value : HEARD.get(plain.trim());
}

/** Reads how many there are into the list of their keys. */
export function readCount(marks: readonly Mark[], text: string, context: ReadingContext): ValueReading {
  const group = context.groups.find((one) => one.id === context.question?.counts);
  const count = group === undefined ? undefined : countIn(marks, text, context, group);
  if (group === undefined || count === undefined) return noValue({ code: 'noMatch' });
  if (!Number.isInteger(count)) return noValue({ code: 'notWhole', value: count });
  if (count > group.max) return noValue({ code: 'tooMany', count, max: group.max });
  const value = countedMembers(count, group, context.members, context.usedMembers);
  const names = new Set([...stemsOf(group.one), ...stemsOf(group.many)]);
  const strict = marks.every(
    (mark) => mark.role !== 'word' || stemsOf(mark.text).every((stem) => names.has(stem)),
  );
  const guessed = HEARD.has(text.trim()) ? { note: { guessed: 'from misspelling' as const } } : {};
  return { kind: 'value', answer: { status: 'given', value, ...howKnown(marks) }, strict, ...guessed };
}

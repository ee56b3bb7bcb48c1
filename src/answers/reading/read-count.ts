import { readNumber } from '../../quantities/index.ts';
import { type Mark, meaningOf } from './mark.ts';
import { numberWordsOf } from './number-words-of.ts';
import type { ReadingContext } from './reading.ts';
import { stemsOf } from './tokens.ts';
import { howKnown, noValue, type ValueReading } from './value-reading.ts';

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

function countIn(
  marks: readonly Mark[],
  text: string,
  context: ReadingContext,
  group: Group,
): number | undefined {
  const meaning = meaningOf(marks).filter((mark) => mark.role !== 'letter');
  const numbers = meaning.filter((mark) => mark.role === 'number');
  const none = meaning.some((mark) => ['none', 'no', 'echoNo', 'negator'].includes(mark.role));
  if (none && numbers.length === 0) return 0;
  const plain = withoutGroupWords(text, group);
  const read = readNumber(plain, { unsafeEnd: 'high', words: numberWordsOf(context.words) });
  if (read.kind !== 'notANumber') return read.value;
  return numbers.length === 1 && !none ? numbers[0]?.value : undefined;
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
  return { kind: 'value', answer: { status: 'given', value, ...howKnown(marks) }, strict };
}

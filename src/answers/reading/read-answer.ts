import type { Answer, PlainAnswer } from '../answer.ts';
import { correctSpelling } from './correct-spelling.ts';
import { type Mark, meaningOf } from './mark.ts';
import { type Corrections, markTokens } from './mark-tokens.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { readBySide } from './read-by-side.ts';
import { readValue } from './read-value.ts';
import type { AnswerReading, ReadingContext } from './reading.ts';
import type { Token } from './tokens.ts';
import type { NoValue, ReadValue } from './value-reading.ts';
import { vocabularyOf, vocabularyOfWords } from './vocabulary.ts';

/** A clean message, with the pieces of its lower-case form. */
export interface Message {
  readonly text: string;
  readonly lower: string;
  readonly tokens: readonly Token[];
}

/** A reading of the answer; `strict` when nothing in the message was left over. */
interface StrictReading {
  readonly reading: AnswerReading;
  readonly strict: boolean;
}

/** `sides` answers hold the list of sides with a yes. */
function sidesValue(read: ReadValue<Answer>): Answer {
  const { answer } = read;
  if (answer.status !== 'bySide') return answer;
  const entries = Object.entries(answer.sides);
  const value = entries
    .filter(([, one]) => one.status === 'given' && one.value === 'yes')
    .map(([side]) => side);
  const open = entries.find(([, one]) => one.status !== 'given')?.[1];
  const first = entries
    .map(([, one]) => one)
    .find((one): one is Extract<PlainAnswer, { status: 'given' }> => one.status === 'given');
  if (value.length === 0 && open !== undefined) return open;
  return { status: 'given', value, ...(first?.how === undefined ? {} : { how: first.how }) };
}

function asReading(read: ReadValue<Answer> | NoValue, prepared: PreparedQuestion): StrictReading {
  if (read.kind === 'noValue') {
    const { problem, nearest } = read;
    const reading = {
      kind: 'notUnderstood',
      problem,
      ...(nearest === undefined ? {} : { nearest }),
    } as const;
    return { reading, strict: false };
  }
  const isSides = prepared.question.kind === 'sides';
  const { missing, ...others } = read.note ?? {};
  const note = isSides || missing === undefined ? others : { ...others, missing };
  const reading = {
    kind: 'answer',
    answer: isSides ? sidesValue(read) : read.answer,
    ...(Object.keys(note).length === 0 ? {} : { note }),
  } as const;
  return { reading, strict: read.strict };
}

function readMarks(
  marks: readonly Mark[],
  message: Message,
  prepared: PreparedQuestion,
  context: ReadingContext,
): StrictReading {
  const read = prepared.sideful
    ? readBySide(marks, message.lower, prepared, context)
    : readValue({ marks, text: message.lower }, prepared, context);
  return asReading(read, prepared);
}

const merged = (message: Message, corrections: Corrections): Message => {
  let lower = message.lower;
  const changed = corrections.tokens.filter((token) => corrections.misspelt.has(token));
  // From the end, so that earlier places stay right; marks keep the places of the typed text.
  for (const token of [...changed].reverse())
    if (token.text.length === token.end - token.start)
      lower = lower.slice(0, token.start) + token.text + lower.slice(token.end);
  return { ...message, lower };
};

/** Reads an answer from words as typed, without putting any right. */
export function readAsTyped(
  message: Message,
  prepared: PreparedQuestion,
  context: ReadingContext,
): StrictReading {
  return readMarks(markTokens(message.tokens, prepared), message, prepared, context);
}

/** Whether a word is right as it stands: one of the questions' or of the language's. */
export function knownWord({ questions, words }: ReadingContext): (word: string) => boolean {
  const vocabulary = [vocabularyOf(questions), vocabularyOfWords(words)];
  return (word) => vocabulary.some((known) => known.has(word));
}

/** Reads an answer with misspelt and cut-off words put right; undefined when there are none. */
export function readCorrected(
  message: Message,
  prepared: PreparedQuestion,
  context: ReadingContext,
): StrictReading | undefined {
  const corrections = correctSpelling(message.tokens, prepared, knownWord(context));
  if (corrections === undefined) return undefined;
  const marks = markTokens(message.tokens, prepared, corrections);
  const read = readMarks(marks, merged(message, corrections), prepared, context);
  const guessed = corrections.misspelt.size > 0 && read.reading.kind === 'answer';
  if (!guessed || read.reading.kind !== 'answer') return read;
  return {
    ...read,
    reading: { ...read.reading, note: { ...read.reading.note, guessed: 'from misspelling' } },
  };
}

/** Whether the whole message is one phrase that the question knows: an option, a side, yes, not sure. */
export function isOnePhrase(message: Message, prepared: PreparedQuestion): boolean {
  const marks = markTokens(message.tokens, prepared).filter((mark) => mark.role !== 'stop');
  const meaning = meaningOf(marks);
  const role = meaning[0]?.role;
  if (marks.length !== 1 || meaning.length !== 1 || role === undefined) return false;
  const used = message.tokens.filter((token) => token.kind !== 'mark');
  const last = used.at(-1);
  if (last === undefined || marks[0]?.end !== last.end) return false;
  return (
    !['word', 'hint', 'except', 'negator', 'same', 'letter', 'number', 'ordinal'].includes(role) ||
    isPlace(role)
  );
}

const isPlace = (role: string): boolean => role === 'letter' || role === 'number' || role === 'ordinal';

import type { Side } from '../../flow/schema/base.ts';
import type { Answer, PlainAnswer } from '../answer.ts';
import { markTokens } from './mark-tokens.ts';
import { buildPhraseBook, phraseAt } from './phrase-book.ts';
import { measuredKinds } from './prepare-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import type { Message } from './read-answer.ts';
import type { AnswerReading } from './reading.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { type Token, tokenise } from './tokens.ts';

/** A message that takes back what it said first. */
export interface TakenBack {
  readonly before: Message;
  readonly after: Message;
  /** Said outright; else only what follows can tell. */
  readonly firm: boolean;
}

const { takenBack, maybeTakenBack } = ENGLISH_TALK_WORDS;
const book = buildPhraseBook([
  ...takenBack.map((phrase) => [phrase, true] as const),
  ...maybeTakenBack.map((phrase) => [phrase, false] as const),
]);

const isNo = (token: Token | undefined): boolean => token?.text === 'no' || token?.text === 'nope';
const isMark = (token: Token | undefined): boolean => token?.kind === 'mark';

/** The part of a message between two of its pieces. */
function partOf({ text, lower, tokens }: Message, from: number, to: number): Message {
  const start = tokens[from]?.start ?? lower.length;
  const end = tokens[to - 1]?.end ?? start;
  const rest = lower.slice(start, to >= tokens.length ? undefined : end).trim();
  const typed = text.length === lower.length ? text.slice(start, start + rest.length) : rest;
  return { text: typed, lower: rest, tokens: tokenise(rest) };
}

/** The last word that takes something back, with the "no" and the signs round it. */
function turnAt(tokens: readonly Token[]): { from: number; to: number; firm: boolean } | undefined {
  for (let at = tokens.length - 1; at > 0; at -= 1) {
    const found = phraseAt(book, tokens, at);
    if (found === undefined) continue;
    let [from, to] = [at, found.next];
    const stepBack = () => {
      while (from > 0 && isMark(tokens[from - 1])) from -= 1;
    };
    stepBack();
    const noBefore = isNo(tokens[from - 1]) && from - 1 > 0;
    if (noBefore) from -= 1;
    stepBack();
    while (isMark(tokens[to])) to += 1;
    const noAfter = isNo(tokens[to]) && tokens.slice(to + 1).some((token) => !isMark(token));
    if (noAfter) to += 1;
    while (isMark(tokens[to])) to += 1;
    const firm = found.item || noBefore || noAfter;
    if (from > 0 && to < tokens.length) return { from, to, firm };
  }
  return undefined;
}

/** "20, no, 25": a number after a bare "no" takes the number before it back. */
function numberTurn(tokens: readonly Token[]): { from: number; to: number; firm: boolean } | undefined {
  const at = tokens.findIndex((token, index) => index > 0 && isNo(token));
  if (at < 0) return undefined;
  let [from, to] = [at, at + 1];
  while (isMark(tokens[from - 1])) from -= 1;
  while (isMark(tokens[to])) to += 1;
  return from > 0 && isNumber(tokens[from - 1], tokens) && isNumber(tokens[to], tokens)
    ? { from, to, firm: false }
    : undefined;
}

const NUMBER_WORD = new Set(
  'one two three four five six seven eight nine ten fifteen twenty thirty forty fifty sixty'.split(' '),
);
const UNIT = /^(?:foot|inch|ft|feet|m|metres?|meters?|cm|mm|yards?|percent|trees?)$/;

function isNumber(token: Token | undefined, tokens: readonly Token[]): boolean {
  if (token === undefined) return false;
  if (token.kind === 'number' || NUMBER_WORD.has(token.text)) return true;
  const before = tokens[tokens.indexOf(token) - 1];
  return (
    UNIT.test(token.text) &&
    before !== undefined &&
    (before.kind === 'number' || NUMBER_WORD.has(before.text))
  );
}

/** Where a message corrects itself: "wood, no wait, metal"; undefined when it does not. */
export function takenBackIn(message: Message, prepared: PreparedQuestion): TakenBack | undefined {
  const { kind } = prepared.question;
  const counts = measuredKinds.has(kind) || kind === 'count' || kind === 'choice';
  const turn = turnAt(message.tokens) ?? (counts ? numberTurn(message.tokens) : undefined);
  if (turn === undefined) return undefined;
  return {
    before: partOf(message, 0, turn.from),
    after: partOf(message, turn.to, message.tokens.length),
    firm: turn.firm,
  };
}

const sidesIn = (message: Message, prepared: PreparedQuestion): number =>
  markTokens(message.tokens, prepared).filter(
    ({ role }) => role === 'sides' || role === 'allSides' || role === 'rest',
  ).length;

const unclear: AnswerReading = { kind: 'notUnderstood', problem: { code: 'mixedSides' } };

/** "Front brick, no wait, vinyl": the one side that was named gets the new value. */
function sameSide(before: Answer, after: Answer): Answer | undefined {
  if (before.status !== 'bySide' || after.status !== 'bySide') return undefined;
  const [value, ...others] = Object.values(after.sides);
  if (value === undefined || others.some((one) => JSON.stringify(one) !== JSON.stringify(value)))
    return undefined;
  const sides: Partial<Record<Side, PlainAnswer>> = {};
  for (const side of Object.keys(before.sides) as Side[]) sides[side] = value;
  return { status: 'bySide', sides };
}

type Given = Extract<AnswerReading, { kind: 'answer' }>;

function correctedSides(
  first: Answer,
  second: Given,
  turn: TakenBack,
  prepared: PreparedQuestion,
): AnswerReading {
  const [named, anew] = [sidesIn(turn.before, prepared), sidesIn(turn.after, prepared)];
  if (named === 0 && anew === 0) return second;
  if (named === 1 && anew > 0) return second;
  // "No wait, the garage side is wood" is about some side that is not known by that name.
  const strange = markTokens(turn.after.tokens, prepared).some((mark) => mark.role === 'word');
  const answer = named === 1 && !strange ? sameSide(first, second.answer) : undefined;
  if (answer?.status !== 'bySide' || second.answer.status !== 'bySide') return unclear;
  const missing = (Object.keys(second.answer.sides) as Side[]).filter((side) => !answer.sides[side]);
  const note = { ...second.note, ...(missing.length > 0 ? { missing } : {}) };
  return { kind: 'answer', answer, ...(Object.keys(note).length > 0 ? { note } : {}) };
}

const countOf = (answer: Answer): number =>
  answer.status === 'given' && Array.isArray(answer.value) ? answer.value.length : 1;

/**
 * What a message says that corrects itself; undefined when it is better read as a whole. `read` reads a part of it: the
 * part before must be an answer, and where it holds more than one value it is not told which of them is taken back.
 */
export function readTakenBack(
  turn: TakenBack,
  prepared: PreparedQuestion,
  read: (message: Message) => AnswerReading,
): AnswerReading | undefined {
  const { kind } = prepared.question;
  const first = read(turn.before);
  if (first.kind !== 'answer') return undefined;
  const second = read(turn.after);
  if (second.kind !== 'answer') return turn.firm ? second : undefined;
  if (!turn.firm && (prepared.sideful || kind === 'several')) return undefined;
  if (prepared.sideful) return correctedSides(first.answer, second, turn, prepared);
  // "1 and 3, no wait, 1 and 2" says all of it anew; "1 and 3, no wait, 2" may mean either.
  if (kind === 'several' && countOf(first.answer) > countOf(second.answer))
    return { kind: 'notUnderstood', problem: { code: 'ambiguous' } };
  return second;
}

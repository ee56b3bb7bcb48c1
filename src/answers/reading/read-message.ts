import { cleanText } from './clean-text.ts';
import { misspellsSide, suggestOptions } from './correct-spelling.ts';
import { type PreparedQuestion, prepareQuestion } from './prepare-question.ts';
import { isOnePhrase, knownWord, type Message, readAsTyped, readCorrected } from './read-answer.ts';
import { guessCommand, readCommand, readStopName, readTarget } from './read-command.ts';
import { type Danger, findDanger } from './read-emergency.ts';
import { readText } from './read-text.ts';
import type { AnswerReading, Reading, ReadingContext } from './reading.ts';
import { readTakenBack, takenBackIn } from './take-back.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { stemsOf, tokenise } from './tokens.ts';
import { vocabularyOf } from './vocabulary.ts';

/** A question's answers end at a line's end: "front wood", next line "back stucco". */
const LINES = /\s*[\r\n]+\s*/g;

function messageOf(raw: string, keepLines: boolean): Message {
  const text = cleanText(keepLines ? raw : raw.trim().replace(LINES, '; '));
  const lower = text.toLowerCase();
  return { text, lower, tokens: tokenise(lower) };
}

/** Removing "it" makes sense only where members are talked about. */
function allowed(reading: Reading | undefined, context: ReadingContext): Reading | undefined {
  const aboutMembers = context.question?.of !== undefined || context.question?.counts !== undefined;
  if (reading?.kind === 'remove' && reading.group === undefined && !aboutMembers) return undefined;
  return reading;
}

function notUnderstood(
  readings: readonly (AnswerReading | undefined)[],
  message: Message,
  prepared: PreparedQuestion,
  context: ReadingContext,
): Reading {
  const problems = readings.filter((reading) => reading?.kind === 'notUnderstood');
  const telling = problems.find((reading) => (reading.nearest?.length ?? 0) > 0);
  const first = telling ?? problems[0] ?? { kind: 'notUnderstood', problem: { code: 'noMatch' } };
  const near =
    first.problem.code === 'noMatch' && !first.nearest
      ? suggestOptions(message.tokens, prepared, knownWord(context))
      : [];
  return near.length > 0 ? { ...first, nearest: near } : first;
}

const ASKING =
  /^(?:what|whats|how|why|which|where|when|who|does|do|is|are|can|could|should|would|will|did)\b.*\?$/;
const ASKING_PLAINLY =
  /^(?:what(?:'?s| is| are| does| do| if| about)|how (?:do|can|should|would|big|wide|far|much|many)|why) \S+ \S+/;

/** A question of the person's own is met with help, not taken for an answer. */
const asks = ({ lower }: Message): boolean => ASKING.test(lower) || ASKING_PLAINLY.test(lower);

/** An answer with a change of mind in it: "wood, no wait, metal". */
function readChangeOfMind(
  message: Message,
  prepared: PreparedQuestion,
  context: ReadingContext,
): AnswerReading | undefined {
  const turn = takenBackIn(message, prepared);
  if (turn === undefined || isOnePhrase(message, prepared)) return undefined;
  return readTakenBack(turn, prepared, (part) => {
    const typed = readAsTyped(part, prepared, context).reading;
    const corrected = typed.kind === 'answer' ? undefined : readCorrected(part, prepared, context);
    return corrected?.reading.kind === 'answer' ? corrected.reading : typed;
  });
}

function readForQuestion(message: Message, prepared: PreparedQuestion, context: ReadingContext): Reading {
  const command = allowed(readCommand(message.tokens, message.text, context.words), context);
  if (prepared.question.kind === 'text') {
    const target = command ?? readTarget(message.tokens, context);
    return target === undefined || target.kind === 'notUnderstood' || target.kind === 'change'
      ? (command ?? readText(message, prepared))
      : target;
  }
  const changed = readChangeOfMind(message, prepared, context);
  if (changed !== undefined && command === undefined) return changed;
  const misspelt = misspellsSide(message.tokens, prepared);
  const corrected = misspelt ? readCorrected(message, prepared, context) : undefined;
  const typed = readAsTyped(message, prepared, context);
  if (typed.reading.kind === 'answer' && isOnePhrase(message, prepared)) return typed.reading;
  if (command !== undefined) return command;
  if (asks(message)) return readTarget(message.tokens, context) ?? { kind: 'command', command: 'help' };
  if (corrected?.reading.kind === 'answer') return corrected.reading;
  if (typed.strict) return typed.reading;
  const target = readTarget(message.tokens, context);
  if (target !== undefined && target.kind !== 'notUnderstood') return target;
  if (typed.reading.kind === 'answer') return typed.reading;
  const guessed = readCorrected(message, prepared, context);
  if (guessed?.reading.kind === 'answer') return guessed.reading;
  return (
    guessCommand(message.tokens, context.words, prepared.known) ??
    target ??
    notUnderstood([typed.reading, guessed?.reading], message, prepared, context)
  );
}

function readWithoutQuestion(message: Message, context: ReadingContext): Reading {
  const { tokens, text } = message;
  return (
    readCommand(tokens, text, context.words) ??
    readTarget(tokens, context) ??
    readStopName(tokens, context) ??
    guessCommand(tokens, context.words, vocabularyOf(context.questions)) ?? {
      kind: 'notUnderstood',
      problem: { code: 'noQuestion' },
    }
  );
}

/** "Fire outside" is a cry even where any text is an answer; "brush near fire roads" is not. */
const MOST_WORDS_BESIDE = 2;
const small = new Set(ENGLISH_TALK_WORDS.fillers.flatMap(stemsOf));

/** A word such as "burns" is no alarm where it is what the question is about, or part of a longer text. */
function explains(
  danger: Danger,
  reading: Reading,
  message: Message,
  prepared: PreparedQuestion | undefined,
): boolean {
  if (prepared === undefined || reading.kind === 'notUnderstood') return false;
  if (reading.kind !== 'answer') return true;
  if (prepared.question.kind === 'text') {
    const others = message.tokens.filter((token) => token.kind !== 'mark' && !danger.tokens.includes(token));
    return others.filter((token) => !small.has(token.stem)).length > MOST_WORDS_BESIDE;
  }
  return danger.tokens.every((token) => prepared.known.has(token.stem));
}

/**
 * Reads what a person typed or said: an emergency before anything else, then an answer to the question, then a
 * command; a command word never hides an answer. Never throws, whatever the text.
 */
export function readMessage(text: string, context: ReadingContext): Reading {
  const { question, words } = context;
  const message = messageOf(text, question?.kind === 'text');
  if (message.text === '') return { kind: 'notUnderstood', problem: { code: 'empty' } };
  const prepared = question === undefined ? undefined : prepareQuestion(question, words);
  const danger = findDanger(message.tokens, words, context.questions);
  const plainOption =
    prepared !== undefined && prepared.question.kind !== 'text' && isOnePhrase(message, prepared);
  if (danger?.sure && !plainOption) return { kind: 'emergency', sure: true, matched: danger.matched };
  const reading =
    prepared === undefined
      ? readWithoutQuestion(message, context)
      : readForQuestion(message, prepared, context);
  if (danger === undefined || explains(danger, reading, message, prepared)) return reading;
  return { kind: 'emergency', sure: false, matched: danger.matched };
}

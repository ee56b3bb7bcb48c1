import { didYouMean } from '../flow/did-you-mean.ts';
import type { Question } from '../flow/flow.ts';
import { type Side, sideNames } from '../flow/schema/base.ts';
import type { UnitId } from '../quantities/index.ts';
import type { Answer, PlainAnswer } from './answer.ts';
import {
  type FileReader,
  type FileValueProblem,
  fileProblem,
  given,
  readFilePlain,
  readFileSides,
  scalar,
} from './read-file-plain.ts';
import { prepareQuestion } from './reading/prepare-question.ts';
import type { ReadingContext, ReadingNote } from './reading/reading.ts';

/** What a value of an answer file is read with. */
export type FileValueContext = Pick<ReadingContext, 'words' | 'sides' | 'groups' | 'units'> &
  Partial<Pick<ReadingContext, 'members' | 'usedMembers'>>;

/** An answer, with the unit that a bare number was taken in; or what is wrong and what may be meant. */
export type FileValueRead =
  | { readonly answer: Answer; readonly assumedUnit?: UnitId; readonly note?: ReadingNote }
  | FileValueProblem;

/** A mapping from sides to values; `rest` and `all` stand for the sides that are not named. */
function readSideMap(value: Readonly<Record<string, unknown>>, reader: FileReader): FileValueRead {
  const asked = reader.context.sides.length > 0 ? reader.context.sides : sideNames;
  const sides: Partial<Record<Side, PlainAnswer>> = {};
  let note: ReadingNote = {};
  const keys = [...sideNames, 'rest', 'all'];
  const wide = Object.keys(value).filter((key) => key === 'rest' || key === 'all');
  if (wide.length > 1) return fileProblem('"rest" and "all" are the same: use one of them.');
  // Named sides first, so that "rest" fills what is left.
  for (const key of [...Object.keys(value)].sort((a, b) => keys.indexOf(a) - keys.indexOf(b))) {
    if (!keys.includes(key))
      return fileProblem(`"${key}" is no side.`, didYouMean(key, keys) ?? `Sides are: ${keys.join(', ')}.`);
    const read = readFilePlain(value[key], reader);
    if ('problem' in read) return { ...read, problem: `${key}: ${read.problem}` };
    note = { ...note, ...read.note };
    const named = keys.indexOf(key) < sideNames.length ? [key as Side] : asked;
    for (const side of named) sides[side] ??= read.answer;
  }
  return { answer: { status: 'bySide', sides }, ...(Object.keys(note).length === 0 ? {} : { note }) };
}

function readEverySide(value: unknown, reader: FileReader): FileValueRead {
  const asked = reader.context.sides.length > 0 ? reader.context.sides : sideNames;
  const text = scalar(value);
  const named =
    Array.isArray(value) || sideNames.some((side) => side === text) || text === 'all' || text === 'none';
  const listed =
    reader.prepared.question.kind === 'yesNo' && named ? readFileSides(value, reader) : undefined;
  if (listed !== undefined && 'problem' in listed) return listed;
  if (listed?.answer.status === 'given') {
    const yes = listed.answer.value as readonly string[];
    const entries = asked.map((side) => [side, given(yes.includes(side) ? 'yes' : 'no').answer]);
    return { answer: { status: 'bySide', sides: Object.fromEntries(entries) } };
  }
  const read = readFilePlain(value, reader);
  if ('problem' in read) return read;
  const sides = Object.fromEntries(asked.map((side) => [side, read.answer]));
  return { ...read, answer: { status: 'bySide', sides } };
}

function withUnit(read: FileValueRead): FileValueRead {
  if ('problem' in read || read.note?.assumedUnit === undefined) return read;
  return { ...read, assumedUnit: read.note.assumedUnit };
}

/**
 * Reads a value of an answer file: an option by id or label, a list, a mapping by side, a number with its unit,
 * `not sure` or `skip`. Unlike a conversation it does not guess: what is misspelt is a problem with a suggestion.
 */
export function readFileValue(value: unknown, question: Question, context: FileValueContext): FileValueRead {
  const whole: ReadingContext = { members: [], ...context, question, questions: [], stops: [] };
  const reader = { prepared: prepareQuestion(question, context.words), context: whole };
  const mapping = typeof value === 'object' && value !== null && !Array.isArray(value);
  if (question.by !== 'side')
    return mapping
      ? fileProblem(`"${question.id}" is not asked by side.`)
      : withUnit(readFilePlain(value, reader));
  return withUnit(
    mapping ? readSideMap(value as Record<string, unknown>, reader) : readEverySide(value, reader),
  );
}

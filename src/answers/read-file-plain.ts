import { didYouMean } from '../flow/did-you-mean.ts';
import { sideNames } from '../flow/schema/base.ts';
import type { PlainAnswer } from './answer.ts';
import { cleanText } from './reading/clean-text.ts';
import { markTokens } from './reading/mark-tokens.ts';
import type { PreparedOption } from './reading/prepare-options.ts';
import type { PreparedQuestion } from './reading/prepare-question.ts';
import { countedMembers } from './reading/read-count.ts';
import { readMeasureValue } from './reading/read-measure.ts';
import { MOST_TEXT } from './reading/read-text.ts';
import type { ReadingContext, ReadingNote } from './reading/reading.ts';
import { stemsOf, tokenise } from './reading/tokens.ts';
import { wordings } from './reading/wordings.ts';
import { sayFileProblem } from './say-file-problem.ts';

/** What is wrong with a value of an answer file, and what may be meant. */
export interface FileValueProblem {
  readonly problem: string;
  readonly suggestion?: string;
}

/** A value of a file that is not by side. */
export interface ReadFilePlain {
  readonly answer: PlainAnswer;
  readonly note?: ReadingNote;
}

/** What file values are read with. */
export interface FileReader {
  readonly prepared: PreparedQuestion;
  readonly context: ReadingContext;
}

/** A given answer. */
export const given = (value: string | number | readonly string[]): ReadFilePlain => ({
  answer: { status: 'given', value },
});

/** A problem with what may be meant. */
export const fileProblem = (text: string, suggestion?: string): FileValueProblem =>
  suggestion === undefined ? { problem: text } : { problem: text, suggestion };

const keyOf = (text: string): string => stemsOf(text).join(' ');
/** A single value as clean text. */
export const scalar = (value: unknown): string | undefined =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? cleanText(String(value))
    : undefined;

/** An option by its id or one of its labels as it stands; a file does not guess. */
function findOption(text: string, prepared: PreparedQuestion): PreparedOption | undefined {
  const named = prepared.question.options?.find(
    (option) => option.id === text || wordings(option.label).some((label) => keyOf(label) === keyOf(text)),
  );
  return prepared.options.find((option) => option.id === named?.id);
}

function noOption(text: string, prepared: PreparedQuestion): FileValueProblem {
  const ids = prepared.options.map((option) => option.id);
  const suggestion = didYouMean(text, ids) ?? `It has: ${ids.join(', ')}.`;
  return fileProblem(`"${prepared.question.id}" has no option "${text}".`, suggestion);
}

function readOne(value: unknown, { prepared }: FileReader): ReadFilePlain | FileValueProblem {
  const text = scalar(value);
  if (text === undefined) return fileProblem(`"${prepared.question.id}" takes one option.`);
  const option = findOption(text, prepared);
  return option === undefined ? noOption(text, prepared) : given(option.id);
}

function readSeveral(value: unknown, { prepared }: FileReader): ReadFilePlain | FileValueProblem {
  const list = Array.isArray(value) ? value : [value];
  const ids = new Set<string>();
  for (const entry of list) {
    const text = scalar(entry);
    if (text === undefined) return fileProblem(`"${prepared.question.id}" takes a list of options.`);
    const option = findOption(text, prepared);
    if (option === undefined) return noOption(text, prepared);
    ids.add(option.id);
  }
  const alone = prepared.options.find((option) => option.alone && ids.has(option.id));
  if (alone !== undefined && ids.size > 1)
    return fileProblem(`"${alone.id}" stands alone: it does not go with other options.`);
  if (ids.size === 0) return fileProblem(`"${prepared.question.id}" is an empty list.`);
  return given(prepared.options.map((option) => option.id).filter((id) => ids.has(id)));
}

const YES_NO: Readonly<Record<string, 'yes' | 'no'>> = { yes: 'yes', true: 'yes', no: 'no', false: 'no' };

function readYesNo(value: unknown, { prepared }: FileReader): ReadFilePlain | FileValueProblem {
  const text = scalar(value)?.toLowerCase() ?? '';
  const found = YES_NO[text];
  return found === undefined
    ? fileProblem(`"${prepared.question.id}" takes yes or no.`, didYouMean(text, ['yes', 'no']))
    : given(found);
}

/** Sides as a list, a single side, `all` or `none`. */
export function readFileSides(
  value: unknown,
  { prepared, context }: FileReader,
): ReadFilePlain | FileValueProblem {
  const asked = context.sides.length > 0 ? context.sides : sideNames;
  const list = (Array.isArray(value) ? value : [value]).map((entry) => scalar(entry) ?? '');
  if (list.length === 1 && list[0] === 'all') return given([...asked]);
  if (list.length === 1 && list[0] === 'none') return given([]);
  const wrong = list.find((text) => !(sideNames as readonly string[]).includes(text));
  if (wrong !== undefined)
    return fileProblem(
      `"${wrong}" is no side.`,
      didYouMean(wrong, [...sideNames, 'all', 'none']) ?? `Sides are: ${sideNames.join(', ')}.`,
    );
  if (list.length === 0) return fileProblem(`"${prepared.question.id}" is an empty list.`);
  return given(sideNames.filter((side) => list.includes(side)));
}

function readCount(value: unknown, { prepared, context }: FileReader): ReadFilePlain | FileValueProblem {
  const group = context.groups.find((one) => one.id === prepared.question.counts);
  if (group === undefined) return fileProblem(`"${prepared.question.id}" counts no group.`);
  const key = new RegExp(`^${group.keyLetter}[1-9]\\d*$`);
  if (Array.isArray(value)) {
    const keys = [...new Set(value.map(String))];
    const wrong = keys.find((one) => !key.test(one));
    if (wrong !== undefined)
      return fileProblem(`"${wrong}" is no key of ${group.many}, such as "${group.keyLetter}1".`);
    return keys.length > group.max
      ? fileProblem(`there is room for ${group.max} ${group.many}.`)
      : given(keys);
  }
  const count = Number(scalar(value) || Number.NaN);
  if (!Number.isInteger(count) || count < 0)
    return fileProblem(`"${prepared.question.id}" takes a whole number.`);
  if (count > group.max) return fileProblem(`there is room for ${group.max} ${group.many}.`);
  return given(countedMembers(count, group, context.members, context.usedMembers));
}

function readMeasure(value: unknown, { prepared, context }: FileReader): ReadFilePlain | FileValueProblem {
  const text = scalar(value);
  if (text === undefined || typeof value === 'boolean' || text === '')
    return fileProblem(`"${prepared.question.id}" takes a ${prepared.question.kind}.`);
  const lower = text.toLowerCase();
  const read = readMeasureValue(markTokens(tokenise(lower), prepared), lower, prepared, context);
  if (read.kind === 'noValue') return fileProblem(sayFileProblem(text, read.problem, prepared.question));
  return { answer: read.answer, ...(read.note === undefined ? {} : { note: read.note }) };
}

function readText(value: unknown, { prepared }: FileReader): ReadFilePlain | FileValueProblem {
  const text = scalar(value);
  if (text === undefined || text === '') return fileProblem(`"${prepared.question.id}" takes a text.`);
  const kept = cleanText(text, MOST_TEXT);
  return { ...given(kept), ...(kept.length < text.length ? { note: { cutTo: MOST_TEXT } } : {}) };
}

function statusOf(value: unknown, { words }: ReadingContext): ReadFilePlain | undefined {
  if (typeof value !== 'string') return undefined;
  const key = keyOf(value);
  if (words.notSure.some((phrase) => keyOf(phrase) === key)) return { answer: { status: 'notSure' } };
  return words.skip.some((phrase) => keyOf(phrase) === key) ? { answer: { status: 'skipped' } } : undefined;
}

/** Reads a value that is not by side. */
export function readFilePlain(value: unknown, reader: FileReader): ReadFilePlain | FileValueProblem {
  const { question } = reader.prepared;
  if (value === null || value === undefined) return fileProblem(`"${question.id}" has no value.`);
  const status = statusOf(value, reader.context);
  if (status !== undefined) return status;
  switch (question.kind) {
    case 'choice':
      return readOne(value, reader);
    case 'several':
      return readSeveral(value, reader);
    case 'yesNo':
      return readYesNo(value, reader);
    case 'sides':
      return readFileSides(value, reader);
    case 'count':
      return readCount(value, reader);
    case 'length':
    case 'number':
    case 'slope':
      return readMeasure(value, reader);
    case 'text':
      return readText(value, reader);
    default:
      return question.kind satisfies never;
  }
}

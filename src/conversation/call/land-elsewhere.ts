import type { Answer } from '../../answers/answer.ts';
import type { Step } from '../../answers/path.ts';
import type { Reading } from '../../answers/reading/reading.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { Call } from '../../flow/schema/call.ts';
import type { Part } from '../message.ts';
import type { Programme } from '../programme.ts';
import { currentStep, readFor } from '../read.ts';
import type { WalkRecord } from '../record.ts';
import { takeAnswer } from '../take-answer.ts';
import { say, type Turned } from '../turned.ts';
import { stepsMentioned, stepsNamed } from './named-steps.ts';
import { keepNote } from './notes.ts';
import { afterPhrase, withoutAside } from './spoken-words.ts';

type AnswerReading = Extract<Reading, { kind: 'answer' }>;

interface Fit {
  readonly step: Step;
  readonly reading: AnswerReading;
}

/** What is named and what is said of it: "fence: wood", "the fence is wood". */
interface Parted {
  readonly name: string;
  readonly answer: string;
  readonly colon: boolean;
}

function part(text: string, is: readonly string[]): Parted | undefined {
  const colon = /^([^:]{2,60}):\s*(\S.*)$/u.exec(text);
  if (colon) return { name: colon[1] ?? '', answer: colon[2] ?? '', colon: true };
  const words = [...is].sort((a, b) => b.length - a.length).join('|');
  const verb = new RegExp(`^(.{2,60}?)\\s(?:${words})\\s+(\\S.*)$`, 'iu').exec(text);
  return verb ? { name: verb[1] ?? '', answer: verb[2] ?? '', colon: false } : undefined;
}

function fitsOf(
  programme: Programme,
  record: WalkRecord,
  steps: readonly Step[],
  texts: readonly string[],
): Fit[] {
  return steps.flatMap((step) => {
    for (const text of texts) {
      const reading = readFor(programme.checklist, record, step, text);
      if (reading.kind === 'answer' && reading.answer.status !== 'notSure' && !reading.note?.guessed)
        return [{ step, reading }];
    }
    return [];
  });
}

/** Whether an answer says something else than before; sides that had none are no change. */
function changed(before: Answer | undefined, after: Answer): before is Answer {
  if (before === undefined) return false;
  if (before.status !== 'bySide' || after.status !== 'bySide') return !sameValue(before, after);
  return Object.entries(before.sides).some(([side, one]) => !sameValue(one, after.sides[side as Side]));
}

/** The same words may have been read with or without how they are known. */
function sameValue(one: Answer, other: Answer | undefined): boolean {
  if (one.status !== 'given' || other?.status !== 'given') return one.status === other?.status;
  return JSON.stringify(one.value) === JSON.stringify(other.value);
}

const short = (step: Step) => ({ text: `question/${step.question.id}/short` });

/** Puts an answer where it belongs and stays at the question that is asked. */
function land(programme: Programme, record: WalkRecord, { step, reading }: Fit, text: string): Turned {
  const named = sideNames.some((side) => new RegExp(`\\b${side}\\b`, 'iu').test(text));
  const before = record.sheet[step.key];
  const turned = takeAnswer(programme, record, step, reading.answer, reading.note);
  if (turned.record.cursor.phase === 'emergency') return turned;
  const answer = turned.record.sheet[step.key] ?? reading.answer;
  const values = { question: short(step), answer: { answer, question: step.question.id } };
  const landed = changed(before, answer)
    ? say('call.landed.changed', { ...values, before: { answer: before, question: step.question.id } })
    : say('call.landed', values);
  const rest = turned.parts.filter(
    (one) => one.kind === 'say' && !/^note\.(?:taken|skipped|missing)/u.test(one.text),
  );
  const everywhere =
    reading.answer.status === 'bySide' && !named ? [say('call.landed.every-side', undefined, 'quiet')] : [];
  const stays = turned.record.cursor.key === record.cursor.key && record.cursor.phase === 'asking';
  return {
    record: turned.record,
    parts: [
      landed,
      ...rest,
      ...everywhere,
      ...(stays && record.cursor.key !== step.key ? [say('call.landed.still', undefined, 'quiet')] : []),
    ],
  };
}

function which(fits: readonly Fit[]): Part {
  const questions = fits.slice(0, 4).map(({ step }) => short(step));
  const example = questions[0] ?? '';
  return say('call.landed.which', { questions: { list: questions, join: 'or' }, example });
}

function asNote(programme: Programme, record: WalkRecord, text: string, why: string): Turned {
  const { record: kept } = keepNote(programme, record, text);
  return { record: kept, parts: [say(why)] };
}

/** The only fit; the question asked now, where it is among them, since it is nearest. */
function oneOf(fits: readonly Fit[], here: Step | undefined): Fit | undefined {
  return fits.length === 1 ? fits[0] : fits.find((one) => one.step.key === here?.key);
}

function landNamed(
  programme: Programme,
  record: WalkRecord,
  text: string,
  parted: Parted,
): Turned | undefined {
  const here = currentStep(programme.checklist, record);
  const { steps, known, sides } = stepsNamed(programme.checklist, record, parted.name);
  // "The roof is sound" about the roof asked about now is an answer like any other.
  if (!known || (!parted.colon && steps.some((step) => step.key === here?.key))) return undefined;
  const texts = [[...sides, parted.answer].join(' '), parted.answer, text];
  const fits = fitsOf(programme, record, steps, texts);
  const fit = oneOf(fits, here);
  if (fit) return land(programme, record, fit, text);
  if (fits.length > 1) return { record, parts: [which(fits)] };
  if (!parted.colon) return undefined;
  return asNote(
    programme,
    record,
    text,
    steps.length === 0 ? 'call.landed.not-asked' : 'call.landed.unclear',
  );
}

/** "Metal roof": the question that is named in it and takes it as an answer. */
function landMentioned(programme: Programme, record: WalkRecord, text: string): Fit | undefined {
  const here = currentStep(programme.checklist, record);
  const steps = stepsMentioned(programme.checklist, record, text).filter((step) => step.key !== here?.key);
  return fitsOf(programme, record, steps, [text])[0];
}

/**
 * An answer to another question than the one asked: named ("fence: wood", "the fence is wood, by the way"), or said
 * to correct ("they said earlier: metal roof"). Nothing when the text is no such thing.
 */
export function landElsewhere(
  programme: Programme,
  record: WalkRecord,
  typed: string,
  reading: Reading,
  words: Call['words'],
): Turned | undefined {
  const corrected = afterPhrase(typed, words.earlier);
  const text = withoutAside(corrected ?? typed, words.aside);
  const parted = part(text, words.is);
  const named = parted && landNamed(programme, record, text, parted);
  if (named) return named;
  const unread =
    reading.kind === 'notUnderstood' && reading.problem.code === 'noMatch' && !reading.nearest?.length;
  if (corrected === undefined && !unread) return undefined;
  const fit = text === '' ? undefined : landMentioned(programme, record, text);
  if (fit) return land(programme, record, fit, text);
  return corrected === undefined ? undefined : asNote(programme, record, text, 'call.landed.unclear');
}

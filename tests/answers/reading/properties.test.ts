import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, PlainAnswer } from '../../../src/answers/answer.ts';
import { readMessage } from '../../../src/answers/reading/read-message.ts';
import type { Reading, ReadingContext } from '../../../src/answers/reading/reading.ts';
import { optionIds } from '../../../src/flow/checks/check-condition.ts';
import type { Question } from '../../../src/flow/flow.ts';
import type { Text } from '../../../src/flow/schema/base.ts';
import { groups, questions, realQuestions, stops, words } from './fixture.ts';

const everyQuestion = [...questions, ...realQuestions];

function contextFor(question: Question | undefined): ReadingContext {
  const sides = ['front', 'left', 'back', 'right'] as const;
  const all = question !== undefined && questions.includes(question) ? questions : realQuestions;
  return { question, words, stops, questions: all, groups, sides, units: 'imperial', members: ['t1'] };
}

const contexts = new Map(everyQuestion.map((question) => [question, contextFor(question)]));
const withoutQuestion = contextFor(undefined);
const contextOf = (question: Question): ReadingContext => contexts.get(question) ?? withoutQuestion;

const spoken = fc
  .array(
    fc.constantFrom(
      ...'front left back right all none except but and or not no yes wood metal bark 1 2 3 a b ft in 10 1/4 about not-sure skip rest , ; : . ? same maybe the is at fire smoke change go to remove tree'.split(
        ' ',
      ),
    ),
    { maxLength: 12 },
  )
  .map((list) => list.join(' '));
const anyText = fc.oneof(
  fc.string({ maxLength: 80 }),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 40 }),
  spoken,
);

function plainAnswers(answer: Answer): PlainAnswer[] {
  return answer.status === 'bySide' ? Object.values(answer.sides) : [answer];
}

function fits(question: Question, answer: PlainAnswer): boolean {
  if (answer.status !== 'given') return true;
  const { value } = answer;
  switch (question.kind) {
    case 'choice':
    case 'yesNo':
      return typeof value === 'string' && optionIds(question).includes(value);
    case 'several':
      return (
        Array.isArray(value) &&
        value.length > 0 &&
        value.every((id: string) => optionIds(question).includes(id))
      );
    case 'sides':
      return Array.isArray(value) && value.every((side: string) => optionIds(question).includes(side));
    case 'count':
      return Array.isArray(value) && value.every((key: string) => /^[a-z]\d+$/.test(key));
    case 'text':
      return typeof value === 'string';
    default:
      return typeof value === 'number' && Number.isFinite(value);
  }
}

const wordings = (text: Text): string[] =>
  typeof text === 'string' ? [text] : Object.values(text).filter((one) => one !== undefined);

function onlyValue(reading: Reading): unknown {
  if (reading.kind !== 'answer') return reading;
  const values = plainAnswers(reading.answer).map((one) => (one.status === 'given' ? one.value : one.status));
  const different = new Set(values.map((value) => JSON.stringify(value)));
  return different.size === 1 ? values[0] : values;
}

describe('whatever is typed', () => {
  it('gives a reading that fits the question, and never throws', () => {
    fc.assert(
      fc.property(fc.constantFrom(...everyQuestion), anyText, (question, text) => {
        const reading = readMessage(text, contextOf(question));
        if (reading.kind !== 'answer') return;
        const answers = plainAnswers(reading.answer);
        expect(reading.answer.status === 'bySide').toBe(question.by === 'side');
        expect(answers.length).toBeGreaterThan(0);
        expect(answers.filter((answer) => !fits(question, answer))).toEqual([]);
      }),
      { numRuns: 3000 },
    );
  });

  it('gives a reading without a question too', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(readMessage(text, withoutQuestion).kind).not.toBe('answer');
      }),
      { numRuns: 500 },
    );
  });

  it('reads the same text the same way every time', () => {
    fc.assert(
      fc.property(fc.constantFrom(...everyQuestion), anyText, (question, text) => {
        expect(readMessage(text, contextOf(question))).toEqual(readMessage(text, contextFor(question)));
      }),
      { numRuns: 500 },
    );
  });
});

describe('the options of every question', () => {
  const withOptions = everyQuestion.filter((question) => (question.options ?? []).length > 0);

  it('are picked by number and by letter', () => {
    for (const question of withOptions) {
      for (const [index, option] of (question.options ?? []).entries()) {
        const expected = question.kind === 'several' ? [option.id] : option.id;
        for (const text of [
          `${index + 1}`,
          `${index + 1}.`,
          `option ${index + 1}`,
          String.fromCharCode(97 + index),
        ])
          expect([question.id, text, onlyValue(readMessage(text, contextOf(question)))]).toEqual([
            question.id,
            text,
            expected,
          ]);
      }
    }
  });

  it('are picked by their label, their id and every word given for them, unless two share it', () => {
    for (const question of withOptions) {
      const spokenBy = new Map<string, number>();
      for (const option of question.options ?? [])
        for (const word of new Set(option.words)) spokenBy.set(word, (spokenBy.get(word) ?? 0) + 1);
      for (const option of question.options ?? []) {
        const expected = question.kind === 'several' ? [option.id] : option.id;
        const own = option.words.filter((word) => spokenBy.get(word) === 1);
        for (const text of [...wordings(option.label), ...own])
          expect([question.id, text, onlyValue(readMessage(text, contextOf(question)))]).toEqual([
            question.id,
            text,
            expected,
          ]);
      }
    }
  });

  it('are never an emergency, whatever else they say', () => {
    for (const question of everyQuestion) {
      const named = [...(question.options ?? []), ...(question.picks ?? [])];
      for (const text of named.flatMap((one) => [...wordings(one.label), ...one.words])) {
        expect([question.id, text, readMessage(text, contextOf(question)).kind]).not.toEqual([
          question.id,
          text,
          'emergency',
        ]);
        expect([text, readMessage(text, withoutQuestion)]).not.toEqual([
          text,
          expect.objectContaining({ sure: true }),
        ]);
      }
    }
  });
});

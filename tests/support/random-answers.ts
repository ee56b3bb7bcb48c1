import type { Answer, AnswerSheet, PlainAnswer } from '../../src/answers/answer.ts';
import type { FlowIndex } from '../../src/answers/flow-index.ts';
import { isOpen, openSides, pathOf, type Step } from '../../src/answers/path.ts';
import { readBound } from '../../src/flow/bound.ts';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import type { Question } from '../../src/flow/flow.ts';
import { type Side, sideNames } from '../../src/flow/schema/base.ts';

/** A number in [0, 1), the next of a seeded row. */
export type Random = () => number;

/** The same row of numbers for the same seed (mulberry32). */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** One of a list. */
export function oneOf<T>(list: readonly T[], random: Random): T {
  const found = list[Math.floor(random() * list.length)];
  if (found === undefined) throw new Error('There is nothing to choose from.');
  return found;
}

function someOf(list: readonly string[], random: Random): string[] {
  const some = list.filter(() => random() < 0.35);
  return some.length > 0 ? some : [oneOf(list, random)];
}

/** What a length or slope may be said as, within the question's own bounds; feet and inches, or percent. */
const measures: Readonly<Record<string, readonly string[]>> = {
  length: [
    '0 ft',
    '1/16 in',
    '1/8 in',
    '1/4 in',
    '6 in',
    '2 ft',
    '4 ft',
    '5 ft',
    '6 ft',
    '9 ft',
    '10 ft',
    '18 ft',
    '30 ft',
    '70 ft',
  ],
  slope: ['0 %', '5 %', '19 %', '20 %', '35 %', '40 %', '60 %'],
  number: ['1925', '1978', '1990', '2008', '2015'],
};

function within(question: Question, value: number): boolean {
  const end = (bound: Question['min']) => (bound === undefined ? undefined : readBound(bound, question.kind));
  const [low, high] = [end(question.min), end(question.max)];
  return (typeof low !== 'number' || value >= low) && (typeof high !== 'number' || value <= high);
}

/** Everything that a measuring question may be answered with here, as it is said. */
export function sayableMeasures(question: Question): string[] {
  return (measures[question.kind] ?? []).filter((text) => {
    const value = readBound(text, question.kind);
    return typeof value === 'number' && within(question, value);
  });
}

function severalValue(question: Question, random: Random): string[] {
  const options = question.options ?? [];
  const alone = options.filter((option) => option.alone).map((option) => option.id);
  if (alone.length > 0 && random() < 0.3) return [oneOf(alone, random)];
  const others = options.filter((option) => !option.alone).map((option) => option.id);
  return someOf(others, random);
}

function givenValue(
  index: FlowIndex,
  question: Question,
  random: Random,
): string | number | readonly string[] {
  switch (question.kind) {
    case 'choice':
    case 'yesNo':
      // Danger stops the walk, and is tested by itself.
      return question.role === 'danger' ? 'no' : oneOf(optionIds(question), random);
    case 'several':
      return severalValue(question, random);
    case 'sides':
      return someOf(sideNames, random);
    case 'count': {
      const group = index.groups.get(question.counts ?? '');
      const count = Math.floor(random() * Math.min(3, group?.max ?? 0));
      return Array.from({ length: count }, (_, position) => `${group?.keyLetter}${position + 1}`);
    }
    case 'text':
      return oneOf(['Blue house', 'clear the gutters by May', 'the one with the red door'], random);
    default: {
      const read = readBound(oneOf(sayableMeasures(question), random), question.kind);
      if (typeof read !== 'number') throw new Error(`No measure for ${question.id}.`);
      return read;
    }
  }
}

/** How often a random answer is not sure or skipped, each. */
export interface Habits {
  readonly unsure: number;
  /** By side: how often some sides are left for later. */
  readonly partial: number;
}
export const usualHabits: Habits = { unsure: 0.08, partial: 0.2 };

function plainAnswer(index: FlowIndex, question: Question, random: Random, habits: Habits): PlainAnswer {
  const chance = random();
  if (chance < habits.unsure) return { status: 'notSure' };
  if (chance < 2 * habits.unsure) return { status: 'skipped' };
  return { status: 'given', value: givenValue(index, question, random) };
}

/** A valid answer to a step as it now waits; by side for all its open sides, or for some of them. */
export function randomAnswer(
  index: FlowIndex,
  sheet: AnswerSheet,
  step: Step,
  random: Random,
  habits = usualHabits,
): Answer {
  if (!step.sides) return plainAnswer(index, step.question, random, habits);
  const open = openSides(step, sheet);
  const asked = open.length > 0 ? open : step.sides;
  const some = random() < habits.partial ? asked.filter(() => random() < 0.5) : asked;
  const sides: Partial<Record<Side, PlainAnswer>> = {};
  for (const side of some.length > 0 ? some : asked)
    sides[side] = plainAnswer(index, step.question, random, habits);
  const before = sheet[step.key];
  return { status: 'bySide', sides: { ...(before?.status === 'bySide' ? before.sides : {}), ...sides } };
}

/** A whole random walk as a sheet: every question on the path answered, in order, from any sheet on. */
export function randomSheet(
  index: FlowIndex,
  random: Random,
  habits = usualHabits,
  start: AnswerSheet = {},
): AnswerSheet {
  let sheet = start;
  for (;;) {
    const open = pathOf(index, sheet).steps.find((step) => isOpen(step, sheet));
    if (!open) return sheet;
    sheet = { ...sheet, [open.key]: randomAnswer(index, sheet, open, random, habits) };
  }
}

import type { Ask } from '../../src/conversation/message.ts';
import type { Programme } from '../../src/conversation/programme.ts';
import type { Question } from '../../src/flow/flow.ts';
import { oneOf, type Random, sayableMeasures } from './random-answers.ts';

const list = (words: readonly string[]) =>
  words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)}` : (words[0] ?? '');

/** Some of a list, at least one, in its order. */
function some<T>(all: readonly T[], random: Random): T[] {
  const found = all.filter(() => random() < 0.4);
  return found.length > 0 ? found : [oneOf(all, random)];
}

function numbers(question: Question, ask: Ask, random: Random): string {
  if (!ask.several) return String(oneOf(ask.choices, random).number);
  const alone = new Set((question.options ?? []).filter((option) => option.alone).map((option) => option.id));
  const together = ask.choices.filter((choice) => !alone.has(choice.id));
  const picked =
    random() < 0.3 && alone.size > 0
      ? ask.choices.filter((choice) => alone.has(choice.id)).slice(0, 1)
      : some(together, random);
  return list(picked.map((choice) => String(choice.number)));
}

function value(question: Question, ask: Ask, random: Random): string {
  switch (question.kind) {
    case 'choice':
    case 'several':
      return numbers(question, ask, random);
    case 'yesNo':
      return question.role === 'danger' ? 'no' : oneOf(['yes', 'no', 'y', 'nope'], random);
    case 'sides':
      return list(some(['front', 'left', 'back', 'right'], random));
    case 'count':
      return oneOf(['none', '1', 'two'], random);
    case 'text':
      return oneOf(['Blue house', 'clean gutters by May'], random);
    default:
      return oneOf(sayableMeasures(question), random);
  }
}

function bySide(question: Question, ask: Ask, random: Random): string {
  if (question.kind === 'yesNo')
    return random() < 0.3 ? oneOf(['all', 'none'], random) : list(some(ask.sides, random));
  if (random() < 0.4 || ask.sides.length < 2) return `${value(question, ask, random)} on all sides`;
  const first = some(ask.sides.slice(1), random);
  const rest = random() < 0.7 ? `, rest ${value(question, ask, random)}` : '';
  return `${value(question, ask, random)} ${list(first)}${rest}`;
}

/** Something a person may say that answers what is asked, in numbers and plain words; now and then not sure or skip. */
export function sayAnswer(programme: Programme, ask: Ask, random: Random): string {
  const question = programme.checklist.index.questions.get(ask.question);
  if (!question) throw new Error(`There is no question ${ask.question}.`);
  const chance = random();
  if (chance < 0.06 && question.role !== 'danger') return oneOf(['not sure', 'no idea', 'skip'], random);
  return ask.sides.length > 0 ? bySide(question, ask, random) : value(question, ask, random);
}

/** What else people say on a walk: none of it answers anything. */
export const otherTalk = [
  'back',
  'why',
  'help',
  'where am i',
  'go to vents',
  'go to trees',
  'change roof covering',
  'change gutters',
  'what do you mean by that',
  '',
  'qwzx vbnm',
  '🔥🔥',
  'remove tree 1',
] as const;

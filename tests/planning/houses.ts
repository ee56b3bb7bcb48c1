import { readFileSync } from 'node:fs';
import type { Answer, AnswerSheet, PlainAnswer } from '../../src/answers/answer.ts';
import { isOpen, layOutPath } from '../../src/answers/path.ts';
import type { Checklist } from '../../src/assess/checklist.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import type { Question } from '../../src/flow/flow.ts';
import { sayProblem } from '../../src/flow/problem.ts';
import { realProgramme } from '../support/programme.ts';

/** The checklist of the real flow. */
export const checklist: Checklist = realProgramme().checklist;

/** The demo houses, by the names of their files. */
export const demoHouses = [
  'fernhollow-lane-12',
  'kiln-road-3',
  'larkspur-way-41',
  'mill-yard-8',
  'old-flume-road-27',
  'weir-cottages-5',
] as const;

/** The sheet of an answer file below `tests`; a fault or warning in it fails. */
export function sheetOf(path: string): AnswerSheet {
  const file = `tests/${path}.yaml`;
  const { sheet, problems, warnings } = readAnswers(checklist.index, file, readFileSync(file, 'utf8'));
  const said = [...problems, ...warnings].map(sayProblem);
  if (said.length > 0) throw new Error(said.join('\n'));
  return sheet;
}

function anyPlain(question: Question, random: () => number, unknown: number): PlainAnswer {
  if (random() < unknown) return { status: 'notSure' };
  const ids = optionIds(question);
  const one = () => ids[Math.floor(random() * ids.length)] ?? '';
  switch (question.kind) {
    case 'choice':
    case 'yesNo':
      return { status: 'given', value: one() };
    case 'sides':
      return { status: 'given', value: [one()] };
    case 'several': {
      const several = ids.filter(() => random() < 0.3);
      return { status: 'given', value: several.length > 0 ? several : [one()] };
    }
    case 'length':
      return { status: 'given', value: random() < 0.5 ? random() * 0.3 : random() * 20 };
    case 'slope':
      return { status: 'given', value: random() * 60 };
    case 'number':
      return { status: 'given', value: 1940 + Math.floor(random() * 80) };
    case 'text':
      return { status: 'skipped' };
    case 'count': {
      const letter = checklist.index.groups.get(question.counts ?? '')?.keyLetter ?? '';
      return {
        status: 'given',
        value: Array.from({ length: Math.floor(random() * 4) }, (_, at) => `${letter}${at + 1}`),
      };
    }
  }
}

/** A made-up house: every question on the path answered at random, some with "not sure"; nobody is in danger. */
export function anyHouse(random: () => number, unknown = 0): AnswerSheet {
  let sheet: AnswerSheet = {};
  for (;;) {
    const now = sheet;
    const step = layOutPath(checklist.index, now).steps.find((one) => isOpen(one, now));
    if (!step) return sheet;
    const { question, sides } = step;
    const plain = (): PlainAnswer => {
      if (question.role === 'danger') return { status: 'given', value: 'no' };
      return question.role === 'sides'
        ? { status: 'given', value: 'yes' }
        : anyPlain(question, random, unknown);
    };
    const answer: Answer = sides
      ? { status: 'bySide', sides: Object.fromEntries(sides.map((side) => [side, plain()])) }
      : plain();
    sheet = { ...sheet, [step.key]: answer };
  }
}

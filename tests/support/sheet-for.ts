import type { Answer, AnswerSheet, PlainAnswer } from '../../src/answers/answer.ts';
import type { FlowIndex } from '../../src/answers/flow-index.ts';
import { isOpen, pathOf, type Step } from '../../src/answers/path.ts';
import { readBound } from '../../src/flow/bound.ts';
import type { Question } from '../../src/flow/flow.ts';
import type { Assignment, Wanted } from '../../src/flow/reach.ts';

type Measure = NonNullable<Wanted['measures']>[number];

function boundOf(index: FlowIndex, question: Question, bound: Measure['bound']): number {
  const general = index.limits.get(index.flow.walk.generalRulebook);
  const value =
    typeof bound === 'object' ? general?.get(bound.limit)?.value : readBound(bound, question.kind);
  if (typeof value !== 'number') throw new Error(`${question.id} is compared with what is no number.`);
  return value;
}

const comparisons = {
  atLeast: (value: number, bound: number) => value >= bound,
  atMost: (value: number, bound: number) => value <= bound,
  above: (value: number, bound: number) => value > bound,
  below: (value: number, bound: number) => value < bound,
} as const;

/** A value for which every wanted comparison comes out as wanted: at a bound, or a little beside one. */
function measureFor(index: FlowIndex, question: Question, measures: readonly Measure[]): number {
  const bounds = measures.map((one) => boundOf(index, question, one.bound));
  const step = question.kind === 'count' || question.kind === 'number' ? 1 : 0.01;
  const found = bounds
    .flatMap((bound) => [bound, bound + step, Math.max(0, bound - step)])
    .find((value) =>
      measures.every((one, at) => comparisons[one.test](value, bounds[at] ?? 0) === one.holds),
    );
  if (found === undefined) throw new Error(`No value of ${question.id} fits ${JSON.stringify(measures)}.`);
  return found;
}

function plainFor(index: FlowIndex, question: Question, wanted: Wanted | undefined): PlainAnswer {
  const [option] = wanted?.options ?? [];
  if (option !== undefined) {
    const list = question.kind === 'several' || question.kind === 'sides';
    return { status: 'given', value: list ? [option] : option };
  }
  if (!wanted?.measures) return { status: 'notSure' };
  const value = measureFor(index, question, wanted.measures);
  if (question.kind !== 'count') return { status: 'given', value };
  const letter = index.groups.get(question.counts ?? '')?.keyLetter;
  return {
    status: 'given',
    value: Array.from({ length: value }, (_, position) => `${letter}${position + 1}`),
  };
}

function answerFor(index: FlowIndex, step: Step, wanted: Wanted | undefined): Answer {
  const plain = plainFor(index, step.question, wanted);
  return step.sides
    ? { status: 'bySide', sides: Object.fromEntries(step.sides.map((side) => [side, plain])) }
    : plain;
}

/** The sheet of a walk in which the assigned questions are answered as wanted, and all others with not sure. */
export function sheetFor(index: FlowIndex, assignment: Assignment): AnswerSheet {
  let sheet: AnswerSheet = {};
  for (;;) {
    const open = pathOf(index, sheet).steps.find((step) => isOpen(step, sheet));
    if (!open) return sheet;
    sheet = { ...sheet, [open.key]: answerFor(index, open, assignment.get(open.question.id)) };
  }
}

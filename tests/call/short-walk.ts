import type { Answer, AnswerSheet } from '../../src/answers/answer.ts';
import { isOpen, pathOf, type Step } from '../../src/answers/path.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Checklist } from '../../src/assess/checklist.ts';
import { type CallBudget, nextQuestion, questionsThatFit } from '../../src/planning/next-question.ts';

/** The first three jobs of a list, as ids: lines that are shown as one count once. */
export function firstThree(checklist: Checklist, sheet: AnswerSheet): string {
  const groups = assess(checklist, sheet).groups.filter((group) => group.share > 0);
  const ids = groups.slice(0, 3).map(({ jobs }) => {
    const action = jobs[0]?.proposal.action;
    return action?.mergeBy ?? action?.id ?? '';
  });
  return [...new Set(ids)].sort().join(' ');
}

/** What a caller says who knows everything about the house: what is not asked in a whole walk is not known. */
function answerOf(full: AnswerSheet, step: Step): Answer {
  const known = full[step.key];
  if (!step.sides) return known ?? { status: 'notSure' };
  const sides = known?.status === 'bySide' ? known.sides : {};
  return {
    status: 'bySide',
    sides: Object.fromEntries(
      step.sides.map((side) => [side, sides[side] ?? { status: 'notSure' as const }]),
    ),
  };
}

export type Choose = (checklist: Checklist, sheet: AnswerSheet, budget: CallBudget) => Step | undefined;

/** By what it changes, as in a short call. */
export const byWorth: Choose = nextQuestion;

/** As in a whole walk, stopped when the budget is spent. */
export const inWalkOrder: Choose = (checklist, sheet, budget) =>
  questionsThatFit(checklist, sheet, budget)[0];

/** Walks a house until the budget is spent. */
export function walkShort(
  checklist: Checklist,
  full: AnswerSheet,
  whole: CallBudget,
  choose: Choose,
): AnswerSheet {
  let sheet: AnswerSheet = {};
  let budget = whole;
  for (;;) {
    const step = choose(checklist, sheet, budget);
    if (!step) return sheet;
    sheet = { ...sheet, [step.key]: answerOf(full, step) };
    budget =
      'questions' in budget
        ? { questions: budget.questions - 1 }
        : { seconds: budget.seconds - step.question.seconds };
  }
}

const stepsOf = (checklist: Checklist, full: AnswerSheet) =>
  pathOf(checklist.index, full).steps.filter((step) => !isOpen(step, full));

/** A third of the questions of a whole walk. */
export function thirdOfQuestions(checklist: Checklist, full: AnswerSheet): CallBudget {
  return { questions: Math.ceil(stepsOf(checklist, full).length / 3) };
}

/** A third of the time of a whole walk. */
export function thirdOfTime(checklist: Checklist, full: AnswerSheet): CallBudget {
  return { seconds: stepsOf(checklist, full).reduce((sum, step) => sum + step.question.seconds, 0) / 3 };
}

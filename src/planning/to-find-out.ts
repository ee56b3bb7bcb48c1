import type { Answer, AnswerKey, AnswerSheet, PlainAnswer } from '../answers/answer.ts';
import { compileCondition, type Test } from '../answers/condition.ts';
import { openSides, pathOf, type Step } from '../answers/path.ts';
import { assess, type Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import { readBound } from '../flow/bound.ts';
import type { Question } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';

/** An answer that is not known, and what knowing it may bring to light. */
export interface ToFindOut {
  readonly key: AnswerKey;
  readonly step: Step;
  readonly why: 'notSure' | 'skipped' | 'notAsked';
  /** By side: the sides that are not known. */
  readonly sides: readonly Side[];
  /** Expected exposure that jobs could take off, over the possible answers with their priors; relative units. */
  readonly stake: number;
}

type Prior = NonNullable<Question['priors']>[number];

const compiled = new WeakMap<Prior, Test>();

/** The first prior whose condition holds; one whose condition is not known is passed over. */
function priorOf(checklist: Checklist, question: Question, now: Assessment, step: Step): Prior['are'] {
  const { index } = checklist;
  const found = question.priors?.find((prior) => {
    if (!prior.if) return true;
    const test = compiled.get(prior) ?? compileCondition(prior.if, (id) => index.questions.get(id));
    compiled.set(prior, test);
    const spot = step.group === undefined ? {} : { group: step.group, member: step.member ?? '' };
    return test(now.facts, spot) === 'yes';
  });
  return found?.are ?? {};
}

function valueOf(question: Question, id: string): PlainAnswer | undefined {
  if (question.kind === 'several') return { status: 'given', value: [id] };
  if (question.kind === 'choice' || question.kind === 'yesNo') return { status: 'given', value: id };
  const value = readBound(question.kind === 'number' ? Number(id) : id, question.kind);
  return typeof value === 'number' ? { status: 'given', value } : undefined;
}

function answerFor(step: Step, sides: readonly Side[], value: PlainAnswer, before: Answer | undefined): Answer {
  if (!step.sides) return value;
  const known = before?.status === 'bySide' ? before.sides : {};
  return { status: 'bySide', sides: { ...known, ...Object.fromEntries(sides.map((side) => [side, value])) } };
}

/** The sides of a step that are not known, or one entry for a question that is not by side. */
function unknownSides(step: Step, sheet: AnswerSheet): readonly Side[] {
  const answer = sheet[step.key];
  if (answer === undefined || answer.status !== 'bySide') return step.sides ?? [];
  return (step.sides ?? []).filter((side) => answer.sides[side]?.status !== 'given');
}

function whyUnknown(step: Step, sheet: AnswerSheet): ToFindOut['why'] | undefined {
  const answer = sheet[step.key];
  if (answer === undefined) return 'notAsked';
  if (answer.status === 'given') return undefined;
  if (answer.status !== 'bySide') return answer.status;
  if (openSides(step, sheet).length > 0) return 'notAsked';
  const statuses = unknownSides(step, sheet).map((side) => answer.sides[side]?.status);
  if (statuses.length === 0) return undefined;
  return statuses.includes('notSure') ? 'notSure' : 'skipped';
}

const removable = (assessment: Assessment) => assessment.exposure - assessment.left;

/** What knowing each unknown answer may bring to light, the most first; answers that could change nothing come last. */
export function toFindOut(checklist: Checklist, sheet: AnswerSheet, now: Assessment): ToFindOut[] {
  const { steps } = pathOf(checklist.index, sheet);
  const list = steps.flatMap((step, position) => {
    const why = whyUnknown(step, sheet);
    if (why === undefined) return [];
    const sides = unknownSides(step, sheet);
    const stake = Object.entries(priorOf(checklist, step.question, now, step)).reduce((sum, [id, probability]) => {
      const value = valueOf(step.question, id);
      if (!value || probability === 0) return sum;
      const tried = { ...sheet, [step.key]: answerFor(step, sides, value, sheet[step.key]) };
      return sum + probability * Math.max(0, removable(assess(checklist, tried)) - removable(now));
    }, 0);
    return [{ key: step.key, step, why, sides, stake, position }];
  });
  list.sort((a, b) => b.stake - a.stake || a.position - b.position);
  return list.map(({ position: _, ...one }) => one);
}

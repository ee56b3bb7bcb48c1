import type { Answer, PlainAnswer } from '../answers/answer.ts';
import { compileCondition, type Facts, type Test } from '../answers/condition.ts';
import type { Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import { readBound } from '../flow/bound.ts';
import type { Question } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';

type Prior = NonNullable<Question['priors']>[number];

const compiled = new WeakMap<Prior, Test>();

/**
 * How likely each answer to a step is: of the first prior whose condition holds; one whose condition is not known is
 * passed over.
 */
export function priorOf(checklist: Checklist, facts: Facts, step: Step): Prior['are'] {
  const { index } = checklist;
  const found = step.question.priors?.find((prior) => {
    if (!prior.if) return true;
    const test = compiled.get(prior) ?? compileCondition(prior.if, (id) => index.questions.get(id));
    compiled.set(prior, test);
    const spot = step.group === undefined ? {} : { group: step.group, member: step.member ?? '' };
    return test(facts, spot) === 'yes';
  });
  return found?.are ?? {};
}

/** The answer that a prior speaks of; nothing where it is no value of the question. */
export function givenValue(question: Question, id: string): PlainAnswer | undefined {
  if (question.kind === 'several') return { status: 'given', value: [id] };
  if (question.kind === 'choice' || question.kind === 'yesNo') return { status: 'given', value: id };
  const value = readBound(question.kind === 'number' ? Number(id) : id, question.kind);
  return typeof value === 'number' ? { status: 'given', value } : undefined;
}

/** An answer to a step: by side the same on these sides, over what stands for the others. */
export function answerFor(
  step: Step,
  sides: readonly Side[],
  value: PlainAnswer,
  before: Answer | undefined,
): Answer {
  if (!step.sides) return value;
  const known = before?.status === 'bySide' ? before.sides : {};
  return { status: 'bySide', sides: { ...known, ...Object.fromEntries(sides.map((side) => [side, value])) } };
}

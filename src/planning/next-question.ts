import type { AnswerSheet } from '../answers/answer.ts';
import { isOpen, openSides, pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import { answerFor, givenValue, priorOf } from './possible-answers.ts';
import { type FirstLines, firstLines } from './short-call/first-lines.ts';
import { askedBefore, isSurelyAsked } from './short-call/questions-before.ts';
import { isTelling } from './short-call/telling-answers.ts';

/** What is left to spend: so many questions, or seconds as the flow says them for each question. */
export type CallBudget = { readonly questions: number } | { readonly seconds: number };

/** An answer that may be given, and how likely it is. */
interface Likely {
  readonly id: string;
  readonly probability: number;
}

interface Candidate {
  readonly step: Step;
  /** How often knowing the answer changes the first jobs, over many houses. */
  readonly worth: number;
  readonly cost: number;
}

/** A second tree tells less than the first, a third less again. Judgement. */
const nextMember = 0.8;
/** A question that an earlier answer may still take off the path. Judgement. */
const perhapsAsked = 0.3;
/** Long questions are dear, but not in proportion: half of a long one is finding the place. Judgement, then measured. */
const costPower = 0.5;
/** Before so many answers nothing stands on the list that a trial could change. */
const triesAfter = 12;
/** Trials for one choice: about a millisecond each. */
const mostTries = 30;
const triesEach = 4;
/** Answers less likely than this are not tried. */
const likelyEnough = 0.03;
/** A change seen in a trial against one seen over many houses: trials leave out what is not known yet. */
const trialWeight = 0.6;

const costOf = (budget: CallBudget, step: Step) =>
  'seconds' in budget ? step.question.seconds ** costPower : 1;

/** Questions that still wait and fit into what is left. */
export function questionsThatFit(checklist: Checklist, sheet: AnswerSheet, budget: CallBudget): Step[] {
  const open = pathOf(checklist.index, sheet).steps.filter((step) => isOpen(step, sheet));
  if ('seconds' in budget) return open.filter((step) => step.question.seconds <= budget.seconds);
  return budget.questions >= 1 ? open : [];
}

function candidatesOf(
  checklist: Checklist,
  sheet: AnswerSheet,
  open: readonly Step[],
  budget: CallBudget,
): Candidate[] {
  const worths = checklist.flow.shortCall?.worth ?? {};
  const path = pathOf(checklist.index, sheet);
  return open
    .map((step) => {
      const place = step.member === undefined ? 0 : Number(step.member.replace(/\D/g, '')) - 1;
      const sure = isSurelyAsked(checklist, path, step) ? 1 : perhapsAsked;
      const worth = sure * (worths[step.question.id] ?? 0) * nextMember ** Math.max(0, place);
      return { step, worth, cost: costOf(budget, step) };
    })
    .sort((a, b) => b.worth / b.cost - a.worth / a.cost);
}

/** How likely each answer is; where the flow does not say, all alike. */
function chancesOf(checklist: Checklist, now: FirstLines, step: Step): [string, number][] {
  const said = Object.entries(priorOf(checklist, now.facts, step));
  if (said.length > 0) return said;
  const { question } = step;
  const ids = question.picks?.map((pick) => String(pick.value)) ?? optionIds(question);
  return ids.map((id) => [id, 1 / ids.length]);
}

/** The likeliest answers that can change anything. */
function likelyAnswers(checklist: Checklist, now: FirstLines, step: Step): Likely[] {
  return chancesOf(checklist, now, step)
    .filter(([id, probability]) => probability >= likelyEnough && isTelling(checklist, step.question, id))
    .sort((a, b) => b[1] - a[1])
    .slice(0, triesEach)
    .map(([id, probability]) => ({ id, probability }));
}

/** Whether the first jobs would be others if this were the answer. */
function changes(checklist: Checklist, sheet: AnswerSheet, now: FirstLines, step: Step, id: string): boolean {
  const value = givenValue(step.question, id);
  if (!value) return false;
  const answer = answerFor(step, openSides(step, sheet), value, sheet[step.key]);
  return firstLines(checklist, { ...sheet, [step.key]: answer }).same !== now.same;
}

/**
 * The most telling of the candidates: its worth over many houses, and how likely it is that its answer changes which
 * jobs come first in this one. Those that cannot get past the best are not tried.
 */
function mostTelling(
  checklist: Checklist,
  sheet: AnswerSheet,
  candidates: readonly Candidate[],
): Step | undefined {
  if (Object.keys(sheet).length < triesAfter) return candidates[0]?.step;
  const now = firstLines(checklist, sheet);
  const bounded = candidates.map((one) => {
    const likely = likelyAnswers(checklist, now, one.step);
    const most = likely.reduce((sum, { probability }) => sum + probability, 0);
    return { ...one, likely, bound: (one.worth + trialWeight * most) / one.cost };
  });
  let left = mostTries;
  let best: { step: Step; value: number } | undefined;
  for (const { step, worth, cost, likely, bound } of bounded) {
    if (best && bound <= best.value) continue;
    const tried = left > 0 ? likely : [];
    left -= tried.length;
    const change = tried
      .filter(({ id }) => changes(checklist, sheet, now, step, id))
      .reduce((sum, { probability }) => sum + probability, 0);
    const value = (worth + trialWeight * change) / cost;
    if (!best || value > best.value) best = { step, value };
  }
  return best?.step;
}

/**
 * The question whose answer is expected to change the first jobs of the list most for what it costs; nothing when none
 * fits into what is left. Worths come from the flow's `shortCall`, the path and the answers so far; a question that
 * depends on one not asked yet gives way to it.
 */
export function nextQuestion(checklist: Checklist, sheet: AnswerSheet, budget: CallBudget): Step | undefined {
  const open = questionsThatFit(checklist, sheet, budget);
  const first = checklist.flow.shortCall?.first ?? [];
  const always = first.flatMap((id) => open.find((step) => step.question.id === id) ?? [])[0];
  if (always) return always;
  const step = mostTelling(checklist, sheet, candidatesOf(checklist, sheet, open, budget));
  return step && askedBefore(checklist, pathOf(checklist.index, sheet), open, step);
}

/** What waits and was not asked, the most telling first. */
export function leftOut(checklist: Checklist, sheet: AnswerSheet): Step[] {
  const open = questionsThatFit(checklist, sheet, { questions: 1 });
  return candidatesOf(checklist, sheet, open, { questions: 1 }).map((one) => one.step);
}

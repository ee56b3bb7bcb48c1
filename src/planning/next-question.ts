import type { AnswerSheet } from '../answers/answer.ts';
import { isOpen, openSides, pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import { answerFor, givenValue, priorOf } from './possible-answers.ts';
import { type FirstLines, firstLines } from './short-call/first-lines.ts';
import { askedBefore } from './short-call/questions-before.ts';

/** What is left to spend: so many questions, or seconds as the flow says them for each question. */
export type CallBudget = { readonly questions: number } | { readonly seconds: number };

interface Candidate {
  readonly step: Step;
  /** How often knowing the answer changes the first jobs, over many houses. */
  readonly worth: number;
  readonly cost: number;
}

/** A second tree tells less than the first, a third less again. Judgement. */
const nextMember = 0.8;
/** Long questions are dear, but not in proportion: half of a long one is finding the place. Judgement, then measured. */
const costPower = 0.5;
/** Before so many answers nothing stands on the list that a trial could change. */
const triesAfter = 10;
/** Trials for one choice: about a millisecond each. */
const mostTries = 24;
const triesEach = 3;
/** Answers less likely than this are not tried. */
const likelyEnough = 0.05;
/** A change seen in a trial against one seen over many houses: trials leave out what is not known yet. */
const trialWeight = 0.3;

const costOf = (budget: CallBudget, step: Step) =>
  'seconds' in budget ? step.question.seconds ** costPower : 1;

/** Questions that still wait and fit into what is left. */
export function questionsThatFit(checklist: Checklist, sheet: AnswerSheet, budget: CallBudget): Step[] {
  const open = pathOf(checklist.index, sheet).steps.filter((step) => isOpen(step, sheet));
  if ('seconds' in budget) return open.filter((step) => step.question.seconds <= budget.seconds);
  return budget.questions >= 1 ? open : [];
}

function candidatesOf(checklist: Checklist, open: readonly Step[], budget: CallBudget): Candidate[] {
  const worths = checklist.flow.shortCall?.worth ?? {};
  return open
    .map((step) => {
      const place = step.member === undefined ? 0 : Number(step.member.replace(/\D/g, '')) - 1;
      const worth = (worths[step.question.id] ?? 0) * nextMember ** Math.max(0, place);
      return { step, worth, cost: costOf(budget, step) };
    })
    .sort((a, b) => b.worth / b.cost - a.worth / a.cost);
}

/** How likely it is that the answer changes which jobs come first, given everything answered so far. */
function tryAnswers(
  checklist: Checklist,
  sheet: AnswerSheet,
  now: FirstLines,
  step: Step,
): { readonly change: number; readonly tries: number } {
  const likely = Object.entries(priorOf(checklist, now.facts, step))
    .filter(([, probability]) => probability >= likelyEnough)
    .sort((a, b) => b[1] - a[1])
    .slice(0, triesEach);
  const sides = openSides(step, sheet);
  const change = likely.reduce((sum, [id, probability]) => {
    const value = givenValue(step.question, id);
    if (!value) return sum;
    const tried = { ...sheet, [step.key]: answerFor(step, sides, value, sheet[step.key]) };
    return firstLines(checklist, tried).same === now.same ? sum : sum + probability;
  }, 0);
  return { change, tries: likely.length };
}

function mostTelling(
  checklist: Checklist,
  sheet: AnswerSheet,
  candidates: readonly Candidate[],
): Step | undefined {
  const given = Object.keys(sheet).length;
  const now = given > triesAfter ? firstLines(checklist, sheet) : undefined;
  let left = mostTries;
  let best: { step: Step; value: number } | undefined;
  for (const { step, worth, cost } of candidates) {
    const tried = now && left > 0 ? tryAnswers(checklist, sheet, now, step) : { change: 0, tries: 0 };
    left -= tried.tries;
    const value = (worth + trialWeight * tried.change) / cost;
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
  const step = mostTelling(checklist, sheet, candidatesOf(checklist, open, budget));
  return step && askedBefore(checklist, pathOf(checklist.index, sheet), open, step);
}

/** What waits and was not asked, the most telling first. */
export function leftOut(checklist: Checklist, sheet: AnswerSheet): Step[] {
  const open = questionsThatFit(checklist, sheet, { questions: 1 });
  return candidatesOf(checklist, open, { questions: 1 }).map((one) => one.step);
}

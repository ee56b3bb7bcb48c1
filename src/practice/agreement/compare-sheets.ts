import type { Answer, AnswerSheet } from '../../answers/answer.ts';
import { openSides, type Step } from '../../answers/path.ts';
import { assess } from '../../assess/assess.ts';
import type { Checklist } from '../../assess/checklist.ts';
import type { Side } from '../../flow/schema/base.ts';
import { findingFacts } from '../key/finding-facts.ts';
import { type Pair, pairsOf } from '../key/pairs.ts';
import { type Kappa, kappaOfPairs } from './kappa.ts';

/** Answers to one question that are not the same; `sides` where it was asked by side. */
export interface AnswerDifference {
  readonly key: string;
  readonly question: string;
  readonly stop: string;
  readonly member?: { readonly group: string; readonly key: string; readonly number: number };
  readonly sides: readonly Side[];
  readonly first: Answer | undefined;
  readonly second: Answer | undefined;
}

/** A finding at a place that only one of the two has. */
export interface FindingDifference {
  readonly pair: Pair;
  readonly foundBy: 'first' | 'second';
}

export interface StopAgreement {
  readonly stop: string;
  readonly kappa: Kappa;
  readonly answers: readonly AnswerDifference[];
  readonly findings: readonly FindingDifference[];
  /** Pairs on which one of the two says nothing certain: they take no part in kappa. */
  readonly open: number;
}

/** Where two walks of one house differ, by stop, and how far they agree beyond chance. */
export interface Agreement {
  readonly whole: Kappa;
  readonly stops: readonly StopAgreement[];
}

interface Judged {
  readonly pair: Pair;
  readonly first: Pair['truth'];
  readonly second: Pair['truth'];
}

/** A pair counts when either walk could observe it; a walk that has no such place has not found it. */
function judgedPairs(first: readonly Pair[], second: readonly Pair[]): Judged[] {
  const one = new Map(first.map((pair) => [pair.id, pair]));
  const other = new Map(second.map((pair) => [pair.id, pair]));
  return [...new Set([...one.keys(), ...other.keys()])].flatMap((id): Judged[] => {
    const [a, b] = [one.get(id), other.get(id)];
    const pair = a ?? b;
    if (!pair || !(a?.observable || b?.observable)) return [];
    return [{ pair, first: a?.truth ?? 'no', second: b?.truth ?? 'no' }];
  });
}

const sameValue = (a: unknown, b: unknown): boolean => {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && [...a].sort().join() === [...b].sort().join();
  return a === b;
};

function sameAnswer(a: Answer | undefined, b: Answer | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  if (a.status === 'bySide' || b.status === 'bySide') return false;
  if (a.status === 'given' && b.status === 'given') return sameValue(a.value, b.value);
  return a.status === b.status;
}

function differentSides(step: Step, a: Answer | undefined, b: Answer | undefined): Side[] {
  const at = (answer: Answer | undefined, side: Side) =>
    answer?.status === 'bySide' ? answer.sides[side] : answer;
  return (step.sides ?? []).filter((side) => !sameAnswer(at(a, side), at(b, side)));
}

function answerDifference(
  step: Step,
  number: number,
  a: AnswerSheet,
  b: AnswerSheet,
): AnswerDifference | undefined {
  const [first, second] = [a[step.key], b[step.key]];
  const sides = step.sides ? differentSides(step, first, second) : [];
  if (step.sides ? sides.length === 0 : sameAnswer(first, second)) return undefined;
  const member =
    step.group === undefined || step.member === undefined
      ? {}
      : { member: { group: step.group, key: step.member, number } };
  const { id, stop } = step.question;
  return { key: step.key, question: id, stop, ...member, sides, first, second };
}

function mergeSteps(a: readonly Step[], b: readonly Step[]): Step[] {
  const merged = new Map(a.map((step) => [step.key, step]));
  for (const step of b) {
    const before = merged.get(step.key);
    const sides = before?.sides && step.sides ? [...new Set([...before.sides, ...step.sides])] : undefined;
    merged.set(step.key, { ...step, ...before, ...(sides ? { sides } : {}) });
  }
  return [...merged.values()];
}

/** Names and notes are nobody's observation; a step neither answered differs in nothing. */
function isCompared(step: Step, a: AnswerSheet, b: AnswerSheet): boolean {
  const unanswered = (sheet: AnswerSheet) =>
    sheet[step.key] === undefined || (step.sides?.length ?? 0) === openSides(step, sheet).length;
  if (step.question.kind === 'text') return false;
  return !(step.sides
    ? unanswered(a) && unanswered(b)
    : a[step.key] === undefined && b[step.key] === undefined);
}

function kappaAmong(judged: readonly Judged[]): Kappa {
  const certain = judged.filter((one) => one.first !== 'unknown' && one.second !== 'unknown');
  return kappaOfPairs(certain.map((one) => ({ first: one.first === 'yes', second: one.second === 'yes' })));
}

function findingDifferences(judged: readonly Judged[]): FindingDifference[] {
  return judged.flatMap(({ pair, first, second }): FindingDifference[] => {
    if (first === second || first === 'unknown' || second === 'unknown') return [];
    return [{ pair, foundBy: first === 'yes' ? 'first' : 'second' }];
  });
}

/** Compares two answer sheets of the same house. */
export function compareSheets(checklist: Checklist, a: AnswerSheet, b: AnswerSheet): Agreement {
  const { index, flow } = checklist;
  const facts = findingFacts(flow);
  const [one, other] = [assess(checklist, a), assess(checklist, b)];
  const judged = judgedPairs(pairsOf(index, facts, one), pairsOf(index, facts, other));
  const steps = mergeSteps(one.path.steps, other.path.steps);
  const numberOf = (step: Step) => {
    const members = (path: typeof one.path) =>
      step.group === undefined ? [] : path.facts.members(step.group);
    const all = [...new Set([...members(one.path), ...members(other.path)])];
    return all.indexOf(step.member ?? '') + 1;
  };
  const stops = flow.stops.map((stop): StopAgreement => {
    const here = judged.filter((each) => each.pair.stop === stop.id);
    const answers = steps
      .filter((step) => step.question.stop === stop.id && isCompared(step, a, b))
      .flatMap((step) => answerDifference(step, numberOf(step), a, b) ?? []);
    const open = here.filter((each) => each.first === 'unknown' || each.second === 'unknown').length;
    return { stop: stop.id, kappa: kappaAmong(here), answers, findings: findingDifferences(here), open };
  });
  return { whole: kappaAmong(judged), stops };
}

import type { Question } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import { type Answer, type AnswerKey, type AnswerSheet, answerKey, type PlainAnswer } from './answer.ts';
import type { Facts, Spot } from './condition.ts';
import type { FlowIndex } from './flow-index.ts';
import type { Limits } from './limits.ts';

/** A question that is asked in this walk, in its place. */
export interface Step {
  readonly key: AnswerKey;
  readonly question: Question;
  readonly group?: string;
  readonly member?: string;
  /** By side: the sides it is asked about. */
  readonly sides?: readonly Side[];
}

/** Everything that follows from the answers alone: the questions on the path, the place and its limits. */
export interface Path {
  readonly sheet: AnswerSheet;
  readonly steps: readonly Step[];
  readonly byKey: ReadonlyMap<AnswerKey, Step>;
  readonly rulebook: string;
  readonly limits: Limits;
  readonly sides: readonly Side[];
  /** Facts for conditions; findings and computations are not known here. */
  readonly facts: Facts;
}

function given(answer: Answer | undefined): (PlainAnswer & { status: 'given' }) | undefined {
  return answer?.status === 'given' ? answer : undefined;
}

/** The keys of a group's members, as its count was last given. */
export function membersOf(index: FlowIndex, sheet: AnswerSheet, group: string): readonly string[] {
  const count = index.countQuestions.get(group);
  const value = count && given(sheet[count.id])?.value;
  return Array.isArray(value) ? (value as readonly string[]) : [];
}

function rulebookOf(index: FlowIndex, sheet: AnswerSheet): string {
  const place = index.roles.get('place');
  const value = place && given(sheet[place.id])?.value;
  return typeof value === 'string' && index.limits.has(value) ? value : index.flow.walk.generalRulebook;
}

/** All sides, less those that the answers say are not open to the air. */
function sidesOf(index: FlowIndex, sheet: AnswerSheet, onPath: boolean): readonly Side[] {
  const question = index.roles.get('sides');
  const answer = question && sheet[question.id];
  if (!onPath || answer?.status !== 'bySide') return index.sides;
  return index.sides.filter((side) => given(answer.sides[side])?.value !== 'no');
}

const nothing: readonly Side[] = [];

function sideAnswer(step: Step, sheet: AnswerSheet, spot: Spot): PlainAnswer | 'offPath' | undefined {
  const answer = sheet[step.key];
  if (!step.sides) return answer?.status === 'bySide' ? undefined : answer;
  if (spot.side === undefined || !step.sides.includes(spot.side)) return 'offPath';
  if (answer === undefined) return undefined;
  return answer.status === 'bySide' ? answer.sides[spot.side] : answer;
}

/**
 * Lays out the path of a walk in one pass: which questions are asked, of which members and sides.
 * Conditions look back only, so that the pass settles each question before the next.
 */
export function layOutPath(index: FlowIndex, sheet: AnswerSheet): Path {
  const rulebook = rulebookOf(index, sheet);
  const limits = index.limits.get(rulebook) ?? new Map();
  const byKey = new Map<AnswerKey, Step>();
  const sidesQuestion = index.roles.get('sides')?.id ?? '';
  const members = new Map(index.flow.groups.map((group) => [group.id, membersOf(index, sheet, group.id)]));
  let sides = index.sides;
  const facts: Facts = {
    answer: (question, spot) => {
      const key = answerKey(question.id, question.of, question.of === undefined ? undefined : spot.member);
      const step = byKey.get(key);
      return step ? sideAnswer(step, sheet, spot) : 'offPath';
    },
    limit: (id) => limits.get(id),
    finding: () => 'unknown',
    computed: () => undefined,
    get sides() {
      return sides;
    },
    members: (group) =>
      byKey.has(index.countQuestions.get(group)?.id ?? '') ? (members.get(group) ?? []) : [],
    memberSides: (group, member) => {
      const key = answerKey(index.groups.get(group)?.sides ?? '', group, member);
      const value = byKey.has(key) ? given(sheet[key])?.value : undefined;
      return Array.isArray(value) ? (value as Side[]).filter((side) => sides.includes(side)) : nothing;
    },
  };
  const groups = new Set<string>();
  for (const question of index.flow.questions) {
    if (question.of !== undefined) {
      if (groups.has(question.of)) continue;
      groups.add(question.of);
      layOutGroup(index, question.of, facts, byKey);
      continue;
    }
    const step = stepOf(index, question, facts, {});
    if (step) byKey.set(step.key, step);
    if (question.id === sidesQuestion) sides = sidesOf(index, sheet, step !== undefined);
  }
  return { sheet, steps: [...byKey.values()], byKey, rulebook, limits, sides, facts };
}

const laidOut = new WeakMap<FlowIndex, WeakMap<AnswerSheet, Path>>();

/** The path of a sheet, laid out once: sheets never change, a new answer makes a new sheet. */
export function pathOf(index: FlowIndex, sheet: AnswerSheet): Path {
  const known = laidOut.get(index) ?? new WeakMap<AnswerSheet, Path>();
  laidOut.set(index, known);
  const before = known.get(sheet);
  if (before) return before;
  const path = layOutPath(index, sheet);
  known.set(sheet, path);
  return path;
}

/** Member by member: all questions about one tree before the next tree. */
function layOutGroup(index: FlowIndex, group: string, facts: Facts, byKey: Map<AnswerKey, Step>): void {
  const count = index.countQuestions.get(group);
  if (!count || !byKey.has(count.id)) return;
  const questions = index.flow.questions.filter((one) => one.of === group);
  for (const member of facts.members(group)) {
    for (const question of questions) {
      const step = stepOf(index, question, facts, { group, member });
      if (step) byKey.set(step.key, step);
    }
  }
}

function stepOf(index: FlowIndex, question: Question, facts: Facts, spot: Spot): Step | undefined {
  const when = index.when.get(question.id);
  if (when && when(facts, spot) !== 'yes') return undefined;
  const key = answerKey(question.id, spot.group, spot.member);
  const member =
    spot.group === undefined || spot.member === undefined ? {} : { group: spot.group, member: spot.member };
  if (question.by === undefined) return { key, question, ...member };
  const where = index.where.get(question.id);
  const sides = where ? facts.sides.filter((side) => where(facts, { ...spot, side }) === 'yes') : facts.sides;
  return sides.length === 0 ? undefined : { key, question, sides, ...member };
}

/** The sides of a step that still have no answer; a question that is not by side has none or is open itself. */
export function openSides(step: Step, sheet: AnswerSheet): readonly Side[] {
  const answer = sheet[step.key];
  if (!step.sides || (answer && answer.status !== 'bySide')) return nothing;
  return step.sides.filter((side) => answer?.sides[side] === undefined);
}

/** Whether a step still waits for an answer. */
export function isOpen(step: Step, sheet: AnswerSheet): boolean {
  const answer = sheet[step.key];
  if (answer === undefined) return true;
  return answer.status === 'bySide' && openSides(step, sheet).length > 0;
}

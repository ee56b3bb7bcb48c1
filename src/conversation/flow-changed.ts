import type { Answer, AnswerKey, AnswerSheet, PlainAnswer } from '../answers/answer.ts';
import { isOpen, pathOf } from '../answers/path.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import type { Question } from '../flow/flow.ts';
import { type AnswerKinds, isStillOfKind } from './answer-kinds.ts';
import type { Programme } from './programme.ts';
import type { Cursor, WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';

function fits(question: Question, value: unknown): boolean {
  const ids = optionIds(question);
  if (question.kind === 'choice' || question.kind === 'yesNo')
    return typeof value === 'string' && ids.includes(value);
  if (question.kind === 'several' || question.kind === 'sides')
    return Array.isArray(value) && value.every((one) => ids.includes(String(one)));
  if (question.kind === 'text') return typeof value === 'string';
  if (question.kind === 'count') return Array.isArray(value);
  return typeof value === 'number';
}

/** What of an answer can still be one to the question as it now is: of one by side, the sides that can. */
function whatFits(question: Question, answer: Answer, kinds: AnswerKinds | undefined): Answer | undefined {
  const plainFits = (one: PlainAnswer) =>
    one.status !== 'given' || (isStillOfKind(kinds, question) && fits(question, one.value));
  if (answer.status !== 'bySide') {
    const wants = question.by === undefined || answer.status !== 'given';
    return wants && plainFits(answer) ? answer : undefined;
  }
  if (question.by !== 'side') return undefined;
  const kept = Object.entries(answer.sides).filter(([, one]) => plainFits(one));
  if (kept.length === 0) return undefined;
  return kept.length === Object.keys(answer.sides).length
    ? answer
    : { status: 'bySide', sides: Object.fromEntries(kept) };
}

/** A key under the name that its question now has. */
function presentKey(programme: Programme, key: AnswerKey): AnswerKey {
  const { flow, index } = programme.checklist;
  const parts = key.split('/');
  const old = parts.at(-1) ?? '';
  const id = index.questions.has(old) ? old : flow.questions.find((one) => one.renamedFrom.includes(old))?.id;
  return [...parts.slice(0, -1), id ?? old].join('/');
}

interface Refitted {
  readonly sheet: AnswerSheet;
  /** How many answers no longer fit, wholly or at some sides. */
  readonly again: number;
}

/** The answers of a sheet that can be answers to the questions as they are. */
export const fittingAnswers = (programme: Programme, record: WalkRecord): AnswerSheet =>
  refit(programme, record).sheet;

/** The sheet under the questions as they now are: renamed ones follow, those that no longer fit are asked again. */
function refit(programme: Programme, record: WalkRecord): Refitted {
  const { questions } = programme.checklist.index;
  let again = 0;
  const entries = Object.entries(record.sheet).flatMap(([key, answer]): [AnswerKey, Answer][] => {
    const now = presentKey(programme, key);
    const question = questions.get(now.split('/').at(-1) ?? '');
    // An answer to a question that is gone is kept: it may come back, and nothing reads it meanwhile.
    const kept = question ? whatFits(question, answer, record.kinds) : answer;
    if (kept !== answer) again++;
    return kept ? [[now, kept]] : [];
  });
  return { sheet: Object.fromEntries(entries), again };
}

/** The question asked now under its present name; none where it is no longer asked, so that the first that waits is. */
function refitCursor(programme: Programme, { cursor }: WalkRecord, sheet: AnswerSheet): Cursor {
  const { key, ...rest } = cursor;
  if (key === undefined) return cursor;
  const now = presentKey(programme, key);
  return pathOf(programme.checklist.index, sheet).byKey.has(now) ? { ...rest, key: now } : rest;
}

/** Carries a walk over to a changed checklist: no answer is lost, and the person is told what is new. */
export function answersKept(programme: Programme, record: WalkRecord): Turned {
  const { flow, index } = programme.checklist;
  if (record.flow === flow.fingerprint) return { record, parts: [] };
  const { sheet, again } = refit(programme, record);
  const open = pathOf(index, sheet).steps.filter((step) => isOpen(step, sheet));
  const cursor = refitCursor(programme, record, sheet);
  return {
    record: { ...record, sheet, cursor, flow: flow.fingerprint },
    parts: [say('walk.flow-changed', { open: open.length, again })],
  };
}

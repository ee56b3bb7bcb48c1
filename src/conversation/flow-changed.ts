import type { Answer, AnswerKey, AnswerSheet } from '../answers/answer.ts';
import { isOpen, pathOf } from '../answers/path.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import type { Flow, Question } from '../flow/flow.ts';
import type { Programme } from './programme.ts';
import type { WalkRecord } from './record.ts';
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

/** Whether an answer can still be one to the question as it now is. */
function stillAnswers(question: Question, answer: Answer): boolean {
  if (answer.status === 'bySide') {
    return (
      question.by === 'side' &&
      Object.values(answer.sides).every((one) => one.status !== 'given' || fits(question, one.value))
    );
  }
  if (question.by === 'side') return answer.status !== 'given';
  return answer.status !== 'given' || fits(question, answer.value);
}

function renamed(flow: Flow): Map<string, string> {
  return new Map(
    flow.questions.flatMap((question) => question.renamedFrom.map((old) => [old, question.id] as const)),
  );
}

/** The sheet under the questions as they now are: renamed ones follow, those that no longer fit are asked again. */
function refit(programme: Programme, sheet: AnswerSheet): AnswerSheet {
  const names = renamed(programme.checklist.flow);
  const { questions } = programme.checklist.index;
  const entries = Object.entries(sheet).flatMap(([key, answer]): [AnswerKey, Answer][] => {
    const parts = key.split('/');
    const old = parts.at(-1) ?? '';
    const id = questions.has(old) ? old : (names.get(old) ?? old);
    const question = questions.get(id);
    // An answer to a question that is gone is kept: it may come back, and nothing reads it meanwhile.
    if (question && !stillAnswers(question, answer)) return [];
    return [[[...parts.slice(0, -1), id].join('/'), answer]];
  });
  return Object.fromEntries(entries);
}

/** Carries a walk over to a changed checklist: no answer is lost, and the person is told what is new. */
export function answersKept(programme: Programme, record: WalkRecord): Turned {
  const { flow, index } = programme.checklist;
  if (record.flow === flow.fingerprint) return { record, parts: [] };
  const sheet = refit(programme, record.sheet);
  const open = pathOf(index, sheet).steps.filter((step) => isOpen(step, sheet));
  const lost = Object.keys(record.sheet).length - Object.keys(sheet).length;
  return {
    record: { ...record, sheet, flow: flow.fingerprint },
    parts: [say('walk.flow-changed', { open: open.length, again: lost })],
  };
}

import type { Question, QuestionKind } from '../flow/flow.ts';

/** question id -> the kind it had when it was answered */
export type AnswerKinds = Readonly<Record<string, QuestionKind>>;

/** Kinds that a stored value does not show: a bare number, a bare text. */
const unshown: ReadonlySet<QuestionKind> = new Set(['length', 'slope', 'number', 'text']);

/** The kinds with that of a question answered now. */
export function kindsWith(kinds: AnswerKinds = {}, { id, kind }: Question): AnswerKinds {
  return !unshown.has(kind) || kinds[id] === kind ? kinds : { ...kinds, [id]: kind };
}

/** Whether a question is still of the kind that it was answered as, under its present or an earlier name. */
export function isStillOfKind(kinds: AnswerKinds = {}, question: Question): boolean {
  const then = [question.id, ...question.renamedFrom]
    .map((id) => kinds[id])
    .find((kind) => kind !== undefined);
  return unshown.has(question.kind) ? then === question.kind : true;
}

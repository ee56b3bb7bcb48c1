import type { AnswerSheet } from '../answers/answer.ts';
import type { Checklist } from '../assess/checklist.ts';

/** What the person calls the house, when that was answered. */
export function labelOf(checklist: Checklist, sheet: AnswerSheet): string | undefined {
  const question = checklist.index.roles.get('label');
  const answer = question && sheet[question.id];
  return answer?.status === 'given' ? String(answer.value) : undefined;
}

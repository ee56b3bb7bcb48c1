import type { AnswerSheet } from '../answers/answer.ts';
import { pathOf } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { UnitSystem } from '../wording/say.ts';

/** The units of a walk: chosen by command, or answered, or those of the place. */
export function unitsOf(checklist: Checklist, sheet: AnswerSheet, chosen?: UnitSystem): UnitSystem {
  if (chosen) return chosen;
  const { index, flow } = checklist;
  const path = pathOf(index, sheet);
  const question = index.roles.get('units');
  const answer = question && path.byKey.has(question.id) ? sheet[question.id] : undefined;
  if (answer?.status === 'given') return answer.value === 'metric' ? 'metric' : 'imperial';
  return flow.rulebooks.find((one) => one.id === path.rulebook)?.units ?? 'imperial';
}

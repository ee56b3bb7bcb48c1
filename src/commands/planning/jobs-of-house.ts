import type { AnswerSheet } from '../../answers/answer.ts';
import type { Checklist } from '../../assess/checklist.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import { assessDone } from '../../planning/done.ts';
import { jobsNamed } from '../../planning/what-if.ts';
import { ProgramError } from '../program-error.ts';

/** The ids of jobs of a house by what was typed; a name that is none of them is a mistake with a way out. */
export function jobsOfHouse(
  checklist: Checklist,
  sheet: AnswerSheet,
  done: readonly string[],
  names: readonly string[],
): string[] {
  const known = assessDone(checklist, sheet, done).proposals.map((one) => one.id);
  const { ids, unknown } = jobsNamed(names, known);
  if (unknown.length === 0) return ids;
  const words = new Set([...known, ...known.map((id) => id.split('@')[0] ?? id)]);
  const lines = unknown.map((name) =>
    [`This house has no job "${name}" to do.`, didYouMean(name, words)].filter(Boolean).join(' '),
  );
  throw new ProgramError(
    `${lines.join('\n')}\nIts jobs are: ${known.length > 0 ? known.join(', ') : 'none'}.`,
  );
}

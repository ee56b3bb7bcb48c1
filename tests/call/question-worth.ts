import type { AnswerSheet } from '../../src/answers/answer.ts';
import { pathOf } from '../../src/answers/path.ts';
import type { Checklist } from '../../src/assess/checklist.ts';
import { firstLines } from '../../src/planning/short-call/first-lines.ts';

/**
 * question id -> how often the first three jobs are others when the answer is not known (and what depends on it is
 * not asked), among the houses that are asked the question.
 */
export function questionWorth(checklist: Checklist, houses: readonly AnswerSheet[]): Map<string, number> {
  const asked = new Map<string, number>();
  const changed = new Map<string, number>();
  for (const full of houses) {
    const whole = firstLines(checklist, full).same;
    const keys = new Map<string, string[]>();
    for (const { question, key } of pathOf(checklist.index, full).steps)
      keys.set(question.id, [...(keys.get(question.id) ?? []), key]);
    for (const [id, without] of keys) {
      asked.set(id, (asked.get(id) ?? 0) + 1);
      const less = Object.fromEntries(Object.entries(full).filter(([key]) => !without.includes(key)));
      if (firstLines(checklist, less).same !== whole) changed.set(id, (changed.get(id) ?? 0) + 1);
    }
  }
  return new Map([...asked].map(([id, count]) => [id, (changed.get(id) ?? 0) / count]));
}

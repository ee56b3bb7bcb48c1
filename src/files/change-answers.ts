import { parse } from 'yaml';
import type { AnswerSheet } from '../answers/answer.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { FlowProblem } from '../flow/problem.ts';
import { readAnswers } from './read-answers.ts';
import { answersAsYaml } from './write-answers.ts';

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `question=answer` in two; the answer is written as in an answer file. */
function inTwo(change: string): { question: string; answer: unknown } | undefined {
  const at = change.indexOf('=');
  if (at < 1) return undefined;
  try {
    return { question: change.slice(0, at).trim(), answer: parse(change.slice(at + 1)) };
  } catch {
    return undefined;
  }
}

/**
 * A sheet with some answers changed: each change is `question=answer` as in an answer file, such as
 * `openings.glass=tempered` or `zone0.leaves={ front: no }`; sides that are not named stay as they are.
 */
export function changeAnswers(
  checklist: Checklist,
  sheet: AnswerSheet,
  changes: readonly string[],
  units: 'imperial' | 'metric',
): {
  readonly sheet: AnswerSheet;
  readonly problems: readonly FlowProblem[];
  readonly warnings: readonly FlowProblem[];
} {
  const root = parse(answersAsYaml(checklist, sheet, units)) as Record<string, unknown>;
  const problems: FlowProblem[] = [];
  for (const change of changes) {
    const read = inTwo(change);
    if (!read) {
      const problem = `"${change}" is not a change, such as "openings.glass=tempered".`;
      problems.push({ path: '--set', line: 1, column: 1, at: '', problem });
      continue;
    }
    const before = root[read.question];
    root[read.question] =
      isMapping(before) && isMapping(read.answer) ? { ...before, ...read.answer } : read.answer;
  }
  if (problems.length > 0) return { sheet, problems, warnings: [] };
  const changed = readAnswers(checklist.index, '--set', JSON.stringify(root, null, 1), units);
  // There is no file with lines: what is wrong is found by its question.
  const unplaced = (list: readonly FlowProblem[]) => list.map((one) => ({ ...one, line: 1, column: 1 }));
  return { sheet: changed.sheet, problems: unplaced(changed.problems), warnings: unplaced(changed.warnings) };
}

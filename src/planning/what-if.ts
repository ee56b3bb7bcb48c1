import type { AnswerSheet } from '../answers/answer.ts';
import type { Checklist } from '../assess/checklist.ts';
import { type Comparison, compareAssessments } from './compare.ts';
import { type AssessedDone, assessDone } from './done.ts';

/** What is supposed on top of a walk as it stands. */
export interface Supposed {
  /** Ids of jobs, such as `mesh-vents@left`; `mesh-vents` stands for it at every place. */
  readonly done: readonly string[];
  /** Answers over those of the walk. */
  readonly answers: AnswerSheet;
}

/** The house as it stands, as it would be, and what lies between. */
export interface WhatIf {
  readonly before: AssessedDone;
  readonly after: AssessedDone;
  readonly comparison: Comparison;
}

/** The ids of jobs that a name stands for: a whole id, or an action at all its places. */
export function jobsNamed(
  names: readonly string[],
  known: readonly string[],
): { ids: string[]; unknown: string[] } {
  const matches = (name: string) => known.filter((id) => id === name || id.split('@')[0] === name);
  return {
    ids: [...new Set(names.flatMap(matches))],
    unknown: names.filter((name) => matches(name).length === 0),
  };
}

/**
 * What if some jobs were done or some answers were others. Nothing is kept: the walk stays as it is. Jobs that are done
 * already stay done on both sides. Jobs are looked up in the house with the answers supposed.
 */
export function whatIf(
  checklist: Checklist,
  sheet: AnswerSheet,
  alreadyDone: readonly string[],
  supposed: Supposed,
): WhatIf {
  const before = assessDone(checklist, sheet, alreadyDone);
  const after = assessDone(checklist, { ...sheet, ...supposed.answers }, [...alreadyDone, ...supposed.done]);
  return { before, after, comparison: compareAssessments(before, after) };
}

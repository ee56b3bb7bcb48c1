import type { AnswerKey, AnswerSheet } from '../answers/answer.ts';
import { openSides, pathOf, type Step } from '../answers/path.ts';
import { type Assessment, assess } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Side } from '../flow/schema/base.ts';
import { takenOffBy } from '../ranking/rank.ts';
import { groupKeyOf } from './doubt/group-table.ts';
import { answerFor, givenValue, priorOf } from './possible-answers.ts';

/** An answer that is not known, and what knowing it may bring to light. */
export interface ToFindOut {
  readonly key: AnswerKey;
  readonly step: Step;
  readonly why: 'notSure' | 'skipped' | 'notAsked';
  /** By side: the sides that are not known. */
  readonly sides: readonly Side[];
  /** Expected exposure that jobs could take off, over the possible answers with their priors; relative units. */
  readonly stake: number;
  /**
   * What doing today's first three lines would miss: how much more the first three lines of the list take off once the
   * answer is known, expected over the possible answers with their priors; relative units. The value of knowing before
   * the first work is done.
   */
  readonly change: number;
  /** How many of the first three lines would be others, expected over the same answers; 0 to 3. */
  readonly moves: number;
}

/** The sides of a step that are not known, or one entry for a question that is not by side. */
function unknownSides(step: Step, sheet: AnswerSheet): readonly Side[] {
  const answer = sheet[step.key];
  if (answer === undefined || answer.status !== 'bySide') return step.sides ?? [];
  return (step.sides ?? []).filter((side) => answer.sides[side]?.status !== 'given');
}

function whyUnknown(step: Step, sheet: AnswerSheet): ToFindOut['why'] | undefined {
  const answer = sheet[step.key];
  if (answer === undefined) return 'notAsked';
  if (answer.status === 'given') return undefined;
  if (answer.status !== 'bySide') return answer.status;
  if (openSides(step, sheet).length > 0) return 'notAsked';
  const statuses = unknownSides(step, sheet).map((side) => answer.sides[side]?.status);
  if (statuses.length === 0) return undefined;
  return statuses.includes('notSure') ? 'notSure' : 'skipped';
}

const removable = (assessment: Assessment) => assessment.exposure - assessment.left;

const firstPlaces = 3;

const firstLines = (assessment: Assessment) =>
  assessment.groups.filter((group) => group.share > 0).slice(0, firstPlaces);

interface Today {
  readonly assessment: Assessment;
  readonly jobs: ReadonlySet<string>;
  readonly lines: ReadonlySet<string>;
}

function todayOf(assessment: Assessment): Today {
  const jobs = firstLines(assessment).flatMap((group) => group.jobs.map((job) => job.proposal));
  return { assessment, jobs: new Set(jobs.map((job) => job.id)), lines: new Set(jobs.map(groupKeyOf)) };
}

interface Worth {
  readonly stake: number;
  readonly change: number;
  readonly moves: number;
}

/** What one answer would bring to light and change. */
function worthOf(then: Assessment, today: Today): Worth {
  const jobs = firstLines(then).flatMap((group) => group.jobs.map((job) => job.proposal));
  const todays = then.ranked.map((one) => one.proposal).filter((one) => today.jobs.has(one.id));
  const missed = takenOffBy(jobs, then.chains) - takenOffBy(todays, then.chains);
  return {
    stake: Math.max(0, removable(then) - removable(today.assessment)),
    change: Math.max(0, missed),
    moves: [...new Set(jobs.map(groupKeyOf))].filter((line) => !today.lines.has(line)).length,
  };
}

/** Expected over the answers that are possible, with their priors; answers without a prior count as changing nothing. */
function expectedWorth(
  checklist: Checklist,
  sheet: AnswerSheet,
  today: Today,
  step: Step,
  sides: readonly Side[],
): Worth {
  const expected = { stake: 0, change: 0, moves: 0 };
  for (const [id, probability] of Object.entries(priorOf(checklist, today.assessment.facts, step))) {
    const value = givenValue(step.question, id);
    if (!value || probability === 0) continue;
    const tried = { ...sheet, [step.key]: answerFor(step, sides, value, sheet[step.key]) };
    const worth = worthOf(assess(checklist, tried), today);
    expected.stake += probability * worth.stake;
    expected.change += probability * worth.change;
    expected.moves += probability * worth.moves;
  }
  return expected;
}

/**
 * What knowing each unknown answer may bring to light: first those that would change the first three lines of the list
 * most, then by what is at stake, then in the order of the walk. Answers that could change nothing come last.
 */
export function toFindOut(checklist: Checklist, sheet: AnswerSheet, now: Assessment): ToFindOut[] {
  const { steps } = pathOf(checklist.index, sheet);
  const today = todayOf(now);
  const list = steps.flatMap((step, position) => {
    const why = whyUnknown(step, sheet);
    if (why === undefined) return [];
    const sides = unknownSides(step, sheet);
    return [
      { key: step.key, step, why, sides, ...expectedWorth(checklist, sheet, today, step, sides), position },
    ];
  });
  list.sort((a, b) => b.change - a.change || b.stake - a.stake || a.position - b.position);
  return list.map(({ position: _, ...one }) => one);
}

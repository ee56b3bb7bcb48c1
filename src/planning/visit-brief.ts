import type { Answer, AnswerKey, AnswerSheet, KnownHow } from '../answers/answer.ts';
import { isOpen, pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Side } from '../flow/schema/base.ts';
import type { ToFindOut } from './to-find-out.ts';

/** How an answer came about: as the person said, or nothing said about it. */
export type Reported = KnownHow | 'notSaid';

/** Something that the assessor has to look at. */
export interface ToCheck {
  readonly key: AnswerKey;
  readonly step: Step;
  /** What the resident did not know, or knows by hearsay or guess only. */
  readonly because: ToFindOut['why'] | 'told' | 'guess';
  /** By side: the sides that are not sure. */
  readonly sides: readonly Side[];
  /** What the resident reported, where anything. */
  readonly reported: Answer | undefined;
  /** Nothing for what was reported: only what is unknown is weighed. */
  readonly change: number | undefined;
  readonly stake: number | undefined;
}

/** Something that the resident reported, seen or not said how. */
export interface ReportedLine {
  readonly key: AnswerKey;
  readonly step: Step;
  readonly answer: Answer;
  readonly how: Reported;
}

/** One stop of the visit. */
export interface BriefStop {
  readonly stop: string;
  readonly toCheck: readonly ToCheck[];
  readonly reported: readonly ReportedLine[];
}

/** What the assessor who comes later should know, in the order of the walk. */
export interface VisitBrief {
  readonly stops: readonly BriefStop[];
  /** How many unknown answers are left out because they would change least. */
  readonly leftOut: number;
  /** Keys of the answers that would change most, the most first: where to look when time is short. */
  readonly first: readonly AnswerKey[];
}

/** What of an answer is known in the weakest way: a guess on one side makes it a guess. */
function weakestHow(answer: Answer): Reported | undefined {
  const plain = answer.status === 'bySide' ? Object.values(answer.sides) : [answer];
  const hows = plain.flatMap((one) => (one.status === 'given' ? [one.how ?? 'notSaid'] : []));
  return (['guess', 'told', 'notSaid', 'seen'] as const).find((how) => hows.includes(how));
}

function sidesKnownBy(answer: Answer, how: Reported): Side[] {
  if (answer.status !== 'bySide') return [];
  return (Object.keys(answer.sides) as Side[]).filter((side) => {
    const one = answer.sides[side];
    return one?.status === 'given' && (one.how ?? 'notSaid') === how;
  });
}

function checkOf(step: Step, sheet: AnswerSheet, unknown: ToFindOut | undefined): ToCheck | undefined {
  const answer = sheet[step.key];
  const base = { key: step.key, step, reported: answer };
  if (unknown) {
    const { why, sides, change, stake } = unknown;
    return { ...base, because: why, sides, change, stake };
  }
  const how = answer && weakestHow(answer);
  if (!answer || (how !== 'told' && how !== 'guess')) return undefined;
  return { ...base, because: how, sides: sidesKnownBy(answer, how), change: undefined, stake: undefined };
}

function reportedOf(step: Step, sheet: AnswerSheet): ReportedLine[] {
  const answer = sheet[step.key];
  const how = answer && !isOpen(step, sheet) ? weakestHow(answer) : undefined;
  return answer && how !== undefined ? [{ key: step.key, step, answer, how }] : [];
}

/** So many unknown answers fit on one page beside what was reported. */
const onOnePage = 20;
const firstToLook = 5;

/**
 * The brief for the assessor: stop by stop what to check and what the resident reported. Of the unknown answers those
 * that would change most are kept; what was told or guessed is always there.
 */
export function visitBrief(
  checklist: Checklist,
  sheet: AnswerSheet,
  unknown: readonly ToFindOut[],
  most = onOnePage,
): VisitBrief {
  const kept = new Map(unknown.slice(0, most).map((one) => [one.key, one]));
  const all = new Set(unknown.map((one) => one.key));
  const { steps } = pathOf(checklist.index, sheet);
  const stops = checklist.flow.stops.map(({ id }): BriefStop => {
    const here = steps.filter((step) => step.question.stop === id);
    const toCheck = here.flatMap((step) => {
      const one = kept.get(step.key);
      return one || !all.has(step.key) ? (checkOf(step, sheet, one) ?? []) : [];
    });
    const checked = new Set(toCheck.map((one) => one.key));
    const reported = here.filter((step) => !checked.has(step.key)).flatMap((step) => reportedOf(step, sheet));
    return { stop: id, toCheck, reported };
  });
  return {
    stops: stops.filter((one) => one.toCheck.length > 0 || one.reported.length > 0),
    leftOut: Math.max(0, unknown.length - most),
    first: unknown
      .filter((one) => one.change > 0 || one.stake > 0)
      .slice(0, firstToLook)
      .map((one) => one.key),
  };
}

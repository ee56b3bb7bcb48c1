import type { AnswerSheet } from '../answers/answer.ts';
import { type Assessment, assess } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import { weigh } from '../assess/weigh.ts';
import type { Proposal } from '../ranking/actions.ts';
import type { ReadyElement } from '../ranking/readiness.ts';

/** For each element what the done jobs leave of it, by the group of jobs of which one is enough. */
type Residuals = ReadonlyMap<number, ReadonlyMap<string, number>>;

const groupOf = (job: Proposal) => job.insteadOf ?? job.id;

function residualsOf(done: readonly Proposal[]): Residuals {
  const residuals = new Map<number, Map<string, number>>();
  for (const job of done) {
    for (const [element, residual] of job.treats) {
      const groups = residuals.get(element) ?? new Map<string, number>();
      groups.set(groupOf(job), Math.min(groups.get(groupOf(job)) ?? 1, residual));
      residuals.set(element, groups);
    }
  }
  return residuals;
}

/** What is left of the elements, and where each of them now stands; those of which nothing is left are gone. */
function elementsLeft(
  elements: readonly ReadyElement[],
  residuals: Residuals,
): { left: ReadyElement[]; positions: Map<number, number> } {
  const left: ReadyElement[] = [];
  const positions = new Map<number, number>();
  elements.forEach((element, position) => {
    const factor = [...(residuals.get(position)?.values() ?? [])].reduce((product, one) => product * one, 1);
    if (factor === 0) return;
    positions.set(position, left.length);
    const { readiness, low, high } = element;
    left.push(
      factor === 1
        ? element
        : { ...element, readiness: readiness * factor, low: low * factor, high: high * factor },
    );
  });
  return { left, positions };
}

/** What an open job still leaves of what the done ones left: of jobs of which one is enough only the better part counts. */
function treatsLeft(
  job: Proposal,
  residuals: Residuals,
  positions: ReadonlyMap<number, number>,
): Map<number, number> {
  const treats = new Map<number, number>();
  for (const [element, residual] of job.treats) {
    const now = positions.get(element);
    const before = residuals.get(element)?.get(groupOf(job)) ?? 1;
    if (now !== undefined && residual < before) treats.set(now, residual / before);
  }
  return treats;
}

/** The jobs that still have something to do, or never treated anything; they wait for no job that is done or gone. */
function openJobs(
  all: readonly Proposal[],
  done: readonly Proposal[],
  residuals: Residuals,
  positions: ReadonlyMap<number, number>,
): Proposal[] {
  const open = all
    .filter((one) => !done.includes(one))
    .map((one) => ({ job: one, treats: treatsLeft(one, residuals, positions) }))
    .filter(({ job, treats }) => treats.size > 0 || job.treats.size === 0);
  const ids = new Set(open.map(({ job }) => job.id));
  return open.map(({ job, treats }) => ({
    ...job,
    treats,
    requires: job.requires.filter((id) => ids.has(id)),
  }));
}

/** A house as it stands once some jobs are done, with the jobs that were found done. */
export interface AssessedDone extends Assessment {
  /** Of the ids given, those that are jobs of this house; the others answer nothing that its answers say. */
  readonly done: readonly Proposal[];
}

/**
 * Assesses a house with some jobs done: the answers stay, the elements that the jobs treat are left with their
 * residuals, and the list holds what remains. Findings stay as answered.
 */
export function assessDone(checklist: Checklist, sheet: AnswerSheet, ids: readonly string[]): AssessedDone {
  const before = assess(checklist, sheet);
  const { flow } = checklist;
  const all = before.proposals;
  const done = all.filter((one) => ids.includes(one.id));
  if (done.length === 0) return { ...before, done };
  const residuals = residualsOf(done);
  const { left: elements, positions } = elementsLeft(before.elements, residuals);
  const open = openJobs(all, done, residuals, positions);
  return { ...before, ...weigh(flow, elements, open, before.path.sides), done };
}

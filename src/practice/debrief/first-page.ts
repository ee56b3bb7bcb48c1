import type { RankedGroup } from '../../ranking/rank.ts';
import type { Practice } from '../practice.ts';
import { knownHouse } from '../session/known.ts';
import type { PracticeState } from '../session/state.ts';
import type { FirstPageCompared } from './debrief.ts';

/** Jobs on the first page of a report. */
export const jobsOnFirstPage = 3;

const holds = (group: RankedGroup, action: string) =>
  group.jobs.some((job) => job.proposal.action.id === action);

/** The trainee's first page beside the program's; nothing when none was written. */
export function compareFirstPage(practice: Practice, state: PracticeState): FirstPageCompared | undefined {
  if (!state.firstPage || state.firstPage.jobs.length === 0) return undefined;
  const groups = knownHouse(practice, state)
    .assessment.groups.filter((group) => group.jobs.some((job) => job.proposal.treats.size > 0))
    .slice(0, jobsOnFirstPage);
  const yours = state.firstPage.jobs;
  const [first] = groups;
  return {
    yours,
    programs: groups.flatMap((group) => group.jobs[0]?.proposal.action.id ?? []),
    shared: yours.filter((action) => groups.some((group) => holds(group, action))),
    sameFirst: first !== undefined && holds(first, yours[0] ?? ''),
  };
}

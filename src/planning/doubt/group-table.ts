import type { Proposal } from '../../ranking/actions.ts';

/** Jobs that are shown as one line, as positions in a list of jobs. */
export interface JobGroup {
  /** `take-out-shrubs/hand`: the word that joins them, or the action, and the lane. */
  readonly key: string;
  readonly jobs: readonly number[];
}

/** What a job is joined by when the list is shown. */
export const groupKeyOf = ({ action, lane }: Proposal): string => `${action.mergeBy ?? action.id}/${lane}`;

/** The groups of a list of jobs. */
export function groupsOf(list: readonly Proposal[]): JobGroup[] {
  const groups = new Map<string, number[]>();
  list.forEach((one, position) => {
    const key = groupKeyOf(one);
    groups.set(key, [...(groups.get(key) ?? []), position]);
  });
  return [...groups].map(([key, jobs]) => ({ key, jobs }));
}

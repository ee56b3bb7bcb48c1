import type { Proposal } from './actions.ts';
import { type Chains, copyProgress, doJob, nothingDone, type Progress, waysByElement } from './exposure.ts';
import { jobsOf, laneOrder, type Ordered } from './order.ts';

/** A job of the ranked list. */
export interface Ranked extends Ordered {
  /** From 1; by share, ties by what it takes off alone, then by id. */
  readonly rank: number;
  /** Place in the order of doing, from 1. */
  readonly turn: number;
  /** Positions of the ways in that this job alone brings to nothing. */
  readonly closes: readonly number[];
  /** Positions of the ways in that it lessens or closes. */
  readonly lessens: readonly number[];
}

/** Jobs shown as one line: the same job at several places, or jobs of one kind. */
export interface RankedGroup {
  readonly rank: number;
  readonly jobs: readonly Ranked[];
  readonly share: number;
  /** Taken off when only this group is done. */
  readonly alone: number;
  /** Ranks of other groups that do much of the same: one of them may be enough. */
  readonly eitherOf: readonly number[];
}

const epsilon = 1e-12;

function byShare(a: { share: number; alone: number; id: string }, b: typeof a): number {
  if (Math.abs(a.share - b.share) > epsilon) return b.share - a.share;
  if (Math.abs(a.alone - b.alone) > epsilon) return b.alone - a.alone;
  return a.id < b.id ? -1 : 1;
}

/** Ranks the jobs by share. Jobs that take nothing off are left out unless somebody demands them. */
export function rank(ordered: readonly Ordered[], chains: Chains): Ranked[] {
  const by = waysByElement(chains);
  return ordered
    .map((one, position) => ({ ...one, turn: position + 1, id: one.proposal.id }))
    .filter(
      (one) =>
        one.share > epsilon || one.alone > epsilon || one.proposal.demanded || one.proposal.treats.size === 0,
    )
    .sort(byShare)
    .map(({ id: _, ...one }, position) => {
      const treated = [...one.proposal.treats];
      const ways = (elements: readonly [number, number][]) =>
        [...new Set(elements.flatMap(([element]) => by[element] ?? []))].sort((a, b) => a - b);
      return {
        ...one,
        rank: position + 1,
        closes: ways(treated.filter(([, residual]) => residual === 0)),
        lessens: ways(treated),
      };
    });
}

/** The ways in of a house before anything is done, indexed once for many questions. */
export interface Untouched {
  readonly chains: Chains;
  readonly by: readonly (readonly number[])[];
  readonly progress: Progress;
}

/** Prepares the ways in of a house for `takenOffBy`. */
export function untouched(chains: Chains): Untouched {
  return { chains, by: waysByElement(chains), progress: nothingDone(chains) };
}

/** What a set of jobs takes off when nothing else is done. */
export function takenOffBy(list: readonly Proposal[], house: Chains | Untouched): number {
  const { chains, by, progress } = 'progress' in house ? house : untouched(house);
  const done = copyProgress(progress);
  return jobsOf(list).reduce((sum, job) => sum + doJob(chains, by, done, job), 0);
}

/** Two groups overlap when together they take off much less than each by itself. */
const overlapPart = 0.7;
/** Overlaps are named among this many groups at the top of the list: below, they matter to nobody. */
const overlapAmong = 12;

type Joined = Omit<RankedGroup, 'eitherOf' | 'rank'>;

/** Groups that lessen no way in together cannot overlap. */
const waysOf = (group: Joined) => new Set(group.jobs.flatMap((job) => job.lessens));

function overlaps(groups: readonly Joined[], house: Untouched): number[][] {
  const either: number[][] = groups.map(() => []);
  const top = Math.min(groups.length, overlapAmong);
  const ways = groups.slice(0, top).map(waysOf);
  for (let one = 0; one < top; one++) {
    for (let other = one + 1; other < top; other++) {
      const a = groups[one];
      const b = groups[other];
      if (!a || !b) continue;
      const smaller = Math.min(a.alone, b.alone);
      const touchSame = [...(ways[other] ?? [])].some((way) => ways[one]?.has(way));
      if (smaller <= epsilon || !touchSame) continue;
      const both = [...a.jobs, ...b.jobs].map((job) => job.proposal);
      if (a.alone + b.alone - takenOffBy(both, house) < overlapPart * smaller) continue;
      either[one]?.push(other + 1);
      either[other]?.push(one + 1);
    }
  }
  return either;
}

/** Joins jobs that are shown together, in the order of what they take off together. */
export function groupForDisplay(ranked: readonly Ranked[], chains: Chains): RankedGroup[] {
  const house = untouched(chains);
  const groups = new Map<string, Ranked[]>();
  for (const job of ranked) {
    const { action } = job.proposal;
    const key = `${action.mergeBy ?? action.id}/${job.proposal.lane}`;
    groups.set(key, [...(groups.get(key) ?? []), job]);
  }
  const joined = [...groups].map(([id, jobs]) => ({
    id,
    jobs,
    share: jobs.reduce((sum, job) => sum + job.share, 0),
    alone: takenOffBy(
      jobs.map((job) => job.proposal),
      house,
    ),
  }));
  joined.sort(byShare);
  const either = overlaps(joined, house);
  return joined.map(({ id: _, ...group }, position) => ({
    ...group,
    rank: position + 1,
    eitherOf: either[position] ?? [],
  }));
}

/** The best first hour: hand jobs in the order of doing while the time that a quick worker needs still fits. */
export function firstHour(ranked: readonly Ranked[], hours = 1): Ranked[] {
  let left = hours;
  return [...ranked]
    .filter((one) => one.proposal.lane === laneOrder[0] && one.share > epsilon)
    .sort((a, b) => a.turn - b.turn)
    .filter((one) => {
      const { low } = one.proposal.action.hours;
      if (low > left + epsilon) return false;
      left -= low;
      return true;
    });
}

import type { Lane } from '../flow/schema/base.ts';
import type { Proposal } from './actions.ts';
import {
  type Chains,
  doJob,
  gainOf,
  type Job,
  nothingDone,
  type Progress,
  waysByElement,
} from './exposure.ts';

export const laneOrder: readonly Lane[] = ['hand', 'shop', 'trade'];

/** A job in the order of doing, with what it takes off. */
export interface Ordered {
  readonly proposal: Proposal;
  /** Taken off the exposure at its turn; these add up to all that can be taken off. */
  readonly share: number;
  /** Taken off when nothing else is done. */
  readonly alone: number;
}

/** Proposals as plain numbers, in the same order. */
export function jobsOf(list: readonly Proposal[]): Job[] {
  return list.map((one) => ({
    id: one.id,
    lane: laneOrder.indexOf(one.lane),
    treats: one.treats,
    insteadOf: one.insteadOf,
  }));
}

/** The heaviest way in that a job would lessen, as things stand. */
function heaviest(job: Job, { by, progress }: Turn): number {
  let most = 0;
  for (const element of job.treats.keys()) {
    for (const way of by[element] ?? []) most = Math.max(most, progress.weights[way] ?? 0);
  }
  return most;
}

interface Turn {
  readonly list: readonly Proposal[];
  readonly jobs: readonly Job[];
  readonly alone: readonly number[];
  readonly chains: Chains;
  readonly by: readonly (readonly number[])[];
  readonly progress: Progress;
  /** What each job took off when last looked at: it never takes off more once others are done. */
  readonly atMost: Float64Array;
  readonly tradeFloor: number;
}

const same = 1e-12;

/** The ready job of a lane that takes most off what is left; ties by what it takes off alone, then by id. */
function nextJob(
  turn: Turn,
  waiting: ReadonlySet<number>,
  lane: number,
  done: ReadonlySet<string>,
): number | undefined {
  let best: number | undefined;
  let bestGain = -1;
  for (const position of waiting) {
    const job = turn.jobs[position];
    const proposal = turn.list[position];
    if (!job || !proposal || job.lane > lane || !proposal.requires.every((id) => done.has(id))) continue;
    if ((turn.atMost[position] ?? 0) < bestGain - same) continue;
    const gain = gainOf(turn.chains, turn.by, turn.progress, job);
    turn.atMost[position] = gain;
    if (best === undefined || gain > bestGain + same) {
      best = position;
      bestGain = gain;
    } else if (gain >= bestGain - same && before(turn, position, best)) {
      best = position;
    }
  }
  return best;
}

function before(turn: Turn, one: number, other: number): boolean {
  const difference = (turn.alone[one] ?? 0) - (turn.alone[other] ?? 0);
  if (Math.abs(difference) > same) return difference > 0;
  return (turn.list[one]?.id ?? '') < (turn.list[other]?.id ?? '');
}

/** Whether a job is worth advising at its turn. A costly one is, while a way in that it lessens still weighs something. */
function isWorth(turn: Turn, position: number): boolean {
  const job = turn.jobs[position];
  const proposal = turn.list[position];
  if (!job || !proposal?.costly || proposal.demanded) return true;
  return heaviest(job, turn) >= turn.tradeFloor;
}

/**
 * The order of doing: lanes in turn, within a lane always the job that takes most off what is left.
 * A job waits for those it requires; one that still waits after the last lane comes last.
 * Trade jobs under the floor are left out: they are not done, and take no share.
 */
export function orderOfDoing(list: readonly Proposal[], chains: Chains, tradeFloor: number): Ordered[] {
  const by = waysByElement(chains);
  const progress = nothingDone(chains);
  const jobs = jobsOf(list);
  const alone = jobs.map((job) => gainOf(chains, by, progress, job));
  const turn: Turn = {
    list,
    jobs,
    alone,
    chains,
    by,
    progress,
    atMost: Float64Array.from(alone),
    tradeFloor,
  };
  // The likeliest first, so that the others need not be looked at.
  const waiting = new Set([...list.keys()].sort((a, b) => (alone[b] ?? 0) - (alone[a] ?? 0)));
  const done = new Set<string>();
  const ordered: Ordered[] = [];
  const take = (position: number) => {
    waiting.delete(position);
    const job = jobs[position];
    const proposal = list[position];
    if (!job || !proposal) return;
    done.add(proposal.id);
    if (!isWorth(turn, position)) return;
    ordered.push({ proposal, share: doJob(chains, by, progress, job), alone: alone[position] ?? 0 });
  };
  for (const lane of [0, 1, 2]) {
    for (
      let next = nextJob(turn, waiting, lane, done);
      next !== undefined;
      next = nextJob(turn, waiting, lane, done)
    )
      take(next);
  }
  // Only jobs that wait for each other in a circle are left: they come last, by what they take off alone.
  for (const position of [...waiting].sort((a, b) => (before(turn, a, b) ? -1 : 1))) take(position);
  return ordered;
}

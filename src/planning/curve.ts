import type { Assessment } from '../assess/assess.ts';
import type { Flow } from '../flow/flow.ts';
import { costsOfJobs, costTogether, type Range } from './job-cost.ts';

/** Where the work stands after a job. */
export interface CurvePoint {
  /** The job just done; nothing at the start. */
  readonly job: string | undefined;
  /** Spent so far, shared costs once. */
  readonly money: Range;
  readonly hours: Range;
  /** What is left of the exposure, as a part of what it was: 1 at the start. */
  readonly left: number;
}

/** What is left of the ways in as the plan is worked off. */
export interface Curve {
  readonly currency: string | undefined;
  readonly points: readonly CurvePoint[];
  /** What no job takes off, as a part of the exposure at the start. */
  readonly floor: number;
}

/**
 * The curve of a plan: jobs in the order of doing, those that take nothing off left out. With `only`, the jobs of a
 * chosen set in their own order with their own shares.
 */
export function curveOf(
  { ranked, exposure, left, facts }: Assessment,
  flow: Flow,
  only?: readonly { readonly id: string; readonly share: number }[],
): Curve {
  const order =
    only ??
    [...ranked].sort((a, b) => a.turn - b.turn).map(({ proposal, share }) => ({ id: proposal.id, share }));
  const proposals = ranked.map((one) => one.proposal);
  const costs = costsOfJobs(flow, proposals, facts.computed);
  const costOf = new Map(proposals.map((one, position) => [one.id, costs[position]]));
  const done: (typeof costs)[number][] = [];
  let taken = 0;
  const part = (amount: number) => (exposure > 0 ? amount / exposure : 0);
  const points: CurvePoint[] = [{ job: undefined, ...costTogether([]), left: exposure > 0 ? 1 : 0 }];
  for (const { id, share } of order) {
    const cost = costOf.get(id);
    if (!cost) continue;
    done.push(cost);
    taken += share;
    // A job that only has to come before another is paid, and shown with the next that takes something off.
    if (share > 1e-12) points.push({ job: id, ...costTogether(done), left: part(exposure - taken) });
  }
  return { currency: flow.costs[0]?.currency, points, floor: part(left) };
}

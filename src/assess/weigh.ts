import type { Flow } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import type { Proposal } from '../ranking/actions.ts';
import type { Chains } from '../ranking/exposure.ts';
import { orderOfDoing } from '../ranking/order.ts';
import { firstHour, groupForDisplay, type Ranked, type RankedGroup, rank } from '../ranking/rank.ts';
import type { ReadyElement } from '../ranking/readiness.ts';
import { type WayIn, waysIn } from '../ranking/ways-in.ts';

/** What follows from the elements of a house and the jobs that treat them. */
export interface Weighed {
  readonly elements: readonly ReadyElement[];
  readonly waysIn: readonly WayIn[];
  readonly chains: Chains;
  /** Every job that answers a finding, also those that are not on the list. */
  readonly proposals: readonly Proposal[];
  /** Sum of the weights of all ways in: relative units, never a probability. */
  readonly exposure: number;
  /** What is left when every job of the list is done. */
  readonly left: number;
  readonly ranked: readonly Ranked[];
  readonly groups: readonly RankedGroup[];
  readonly biggestChange: RankedGroup | undefined;
  readonly firstHour: readonly Ranked[];
}

/** Elements and jobs -> ways in -> jobs in order, joined for display. */
export function weigh(
  flow: Flow,
  elements: readonly ReadyElement[],
  jobs: readonly Proposal[],
  sides: readonly Side[],
): Weighed {
  const ways = waysIn(flow, elements, sides);
  const chains = { readiness: elements.map((one) => one.readiness), ways: ways.map((one) => one.elements) };
  const ordered = orderOfDoing(jobs, chains, flow.walk.tradeFloor);
  const ranked = rank(ordered, chains);
  const groups = groupForDisplay(ranked, chains);
  const exposure = ways.reduce((sum, way) => sum + way.weight, 0);
  const biggest = groups.reduce<RankedGroup | undefined>(
    (best, group) => (group.alone > (best?.alone ?? 0) ? group : best),
    undefined,
  );
  return {
    elements,
    waysIn: ways,
    chains,
    proposals: jobs,
    exposure,
    left: exposure - ordered.reduce((sum, one) => sum + one.share, 0),
    ranked,
    groups,
    biggestChange: biggest,
    firstHour: firstHour(ranked),
  };
}

import type { AnswerSheet } from '../answers/answer.ts';
import type { Facts } from '../answers/condition.ts';
import { layOutPath, type Path } from '../answers/path.ts';
import { computedNumber } from '../computations/house/computed.ts';
import { type House, houseOf } from '../computations/house/house.ts';
import { type Computed, type Found, factsWithFindings, findAll, presentElements } from '../findings/find.ts';
import { type Proposal, proposals } from '../ranking/actions.ts';
import type { Chains } from '../ranking/exposure.ts';
import { orderOfDoing } from '../ranking/order.ts';
import { firstHour, groupForDisplay, type Ranked, type RankedGroup, rank } from '../ranking/rank.ts';
import { type ReadyElement, readyElements } from '../ranking/readiness.ts';
import { type WayIn, waysIn } from '../ranking/ways-in.ts';
import type { Checklist } from './checklist.ts';

/** Everything that follows from a set of answers, before it is put into words. */
export interface Assessment {
  readonly path: Path;
  /** What the computations read, and what they gave so far: they run when asked. */
  readonly house: House;
  readonly facts: Facts;
  readonly found: readonly Found[];
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

/**
 * Assesses a house: answers -> path -> computations -> findings -> elements -> ways in -> jobs in order. `other` stands
 * for the computations where given.
 */
export function assess(checklist: Checklist, sheet: AnswerSheet, other?: Computed): Assessment {
  const { flow, index, rules } = checklist;
  const path = layOutPath(index, sheet);
  const house = houseOf(index, path);
  const computed: Computed = other ?? ((id, spot) => computedNumber(house, id, spot));
  const facts = factsWithFindings(rules, path, computed);
  const found = findAll(rules, path, facts);
  const elements = readyElements(presentElements(rules, path, facts), flow.walk.levels);
  const ways = waysIn(flow, elements, path.sides);
  const chains = { readiness: elements.map((one) => one.readiness), ways: ways.map((one) => one.elements) };
  const proposed = proposals(rules, path, facts, found, elements);
  const ordered = orderOfDoing(proposed, chains, flow.walk.tradeFloor);
  const ranked = rank(ordered, chains);
  const groups = groupForDisplay(ranked, chains);
  const exposure = ways.reduce((sum, way) => sum + way.weight, 0);
  const biggest = groups.reduce<RankedGroup | undefined>(
    (best, group) => (group.alone > (best?.alone ?? 0) ? group : best),
    undefined,
  );
  return {
    path,
    house,
    facts,
    found,
    elements,
    waysIn: ways,
    chains,
    proposals: proposed,
    exposure,
    left: exposure - ordered.reduce((sum, one) => sum + one.share, 0),
    ranked,
    groups,
    biggestChange: biggest,
    firstHour: firstHour(ranked),
  };
}

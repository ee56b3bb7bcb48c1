import type { AnswerSheet } from '../../answers/answer.ts';
import type { Facts } from '../../answers/condition.ts';
import { pathOf } from '../../answers/path.ts';
import type { Checklist } from '../../assess/checklist.ts';
import { computedNumber } from '../../computations/house/computed.ts';
import { houseOf } from '../../computations/house/house.ts';
import { factsWithFindings, findAll, presentElements } from '../../findings/find.ts';
import { proposals } from '../../ranking/actions.ts';
import { orderOfDoing } from '../../ranking/order.ts';
import { readyElements } from '../../ranking/readiness.ts';
import { waysIn } from '../../ranking/ways-in.ts';

/** How many lines at the top of the list count as the first. */
export const firstPlaces = 3;

/** The top of the list as a short call compares it, with the facts behind it. */
export interface FirstLines {
  /** Ids of the jobs, or the word that joins them, sorted and joined: equal when the same jobs come first. */
  readonly same: string;
  readonly ids: readonly string[];
  readonly facts: Facts;
}

/** The same jobs as the first lines of an assessment, without what only a shown list needs: twice as fast. */
export function firstLines(checklist: Checklist, sheet: AnswerSheet): FirstLines {
  const { flow, index, rules } = checklist;
  const path = pathOf(index, sheet);
  const house = houseOf(index, path);
  const facts = factsWithFindings(rules, path, (id, spot) => computedNumber(house, id, spot));
  const found = findAll(rules, path, facts);
  const elements = readyElements(presentElements(rules, path, facts), flow.walk.levels);
  const ways = waysIn(flow, elements, path.sides);
  const chains = { readiness: elements.map((one) => one.readiness), ways: ways.map((one) => one.elements) };
  const jobs = proposals(rules, path, facts, found, elements);
  const shares = new Map<string, { id: string; share: number }>();
  for (const { proposal, share } of orderOfDoing(jobs, chains, flow.walk.tradeFloor)) {
    const id = proposal.action.mergeBy ?? proposal.action.id;
    const line = `${id}/${proposal.lane}`;
    shares.set(line, { id, share: (shares.get(line)?.share ?? 0) + share });
  }
  const top = [...shares.values()].filter((one) => one.share > 0).sort((a, b) => b.share - a.share);
  const ids = [...new Set(top.slice(0, firstPlaces).map((one) => one.id))].sort();
  return { same: ids.join(' '), ids, facts };
}

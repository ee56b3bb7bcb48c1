import type { AnswerSheet } from '../answers/answer.ts';
import type { Facts } from '../answers/condition.ts';
import { layOutPath, type Path } from '../answers/path.ts';
import { computedNumber } from '../computations/house/computed.ts';
import { type House, houseOf } from '../computations/house/house.ts';
import { type Computed, type Found, factsWithFindings, findAll, presentElements } from '../findings/find.ts';
import { proposals } from '../ranking/actions.ts';
import { readyElements } from '../ranking/readiness.ts';
import type { Checklist } from './checklist.ts';
import { type Weighed, weigh } from './weigh.ts';

/** Everything that follows from a set of answers, before it is put into words. */
export interface Assessment extends Weighed {
  readonly path: Path;
  /** What the computations read, and what they gave so far: they run when asked. */
  readonly house: House;
  readonly facts: Facts;
  readonly found: readonly Found[];
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
  const jobs = proposals(rules, path, facts, found, elements);
  return { path, house, facts, found, ...weigh(flow, elements, jobs, path.sides) };
}

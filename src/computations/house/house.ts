import type { AnswerValue } from '../../answers/answer.ts';
import type { Facts, Spot } from '../../answers/condition.ts';
import type { FlowIndex } from '../../answers/flow-index.ts';
import type { Path } from '../../answers/path.ts';
import type { Question } from '../../flow/flow.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { HouseOutcome } from './house-computation.ts';

/** The answers of a walk as the computations read them. */
export interface House {
  readonly facts: Facts;
  readonly question: (id: string) => Question | undefined;
  /** What was worked out already: the answers never change, so each computation runs at most once at a spot. */
  readonly known: Map<string, HouseOutcome | undefined>;
}

/** The house that a path describes. */
export const houseOf = (index: FlowIndex, path: Path): House => ({
  facts: path.facts,
  question: (id) => index.questions.get(id),
  known: new Map(),
});

function read(house: House, id: string, spot: Spot): { value: AnswerValue } | 'unknown' | 'offPath' {
  const question = house.question(id);
  if (!question) return 'offPath';
  const answer = house.facts.answer(question, spot);
  if (answer === 'offPath') return 'offPath';
  return answer?.status === 'given' ? { value: answer.value } : 'unknown';
}

/** A measure at a spot, in its base unit. */
export function measured(house: House, id: string, spot: Spot = {}): number | 'unknown' | 'offPath' {
  const answer = read(house, id, spot);
  if (typeof answer === 'string') return answer;
  return typeof answer.value === 'number' ? answer.value : 'unknown';
}

/** The options chosen at a spot; nothing where they are not known or not asked for. */
export function chosen(house: House, id: string, spot: Spot = {}): readonly string[] {
  const answer = read(house, id, spot);
  if (typeof answer === 'string') return [];
  return Array.isArray(answer.value) ? answer.value : [String(answer.value)];
}

/** Whether a question is asked at a spot and has no known answer there. */
export const isUnknown = (house: House, id: string, spot: Spot = {}): boolean =>
  read(house, id, spot) === 'unknown';

/** Whether one of some options was chosen at a spot. */
export const has = (house: House, id: string, options: readonly string[], spot: Spot = {}): boolean =>
  chosen(house, id, spot).some((one) => options.includes(one));

/** The number of a limit in force: metres, percent or a plain number. */
export function limitOf(house: House, id: string): number | undefined {
  const value = house.facts.limit(id)?.value;
  return typeof value === 'number' ? value : undefined;
}

/** The sides of a house on which something holds. */
export const sidesWhere = (house: House, holds: (spot: { side: Side }) => boolean): readonly Side[] =>
  house.facts.sides.filter((side) => holds({ side }));

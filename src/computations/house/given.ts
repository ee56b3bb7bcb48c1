import type { Spot } from '../../answers/condition.ts';
import type { Dimension } from '../../quantities/index.ts';
import type { InputValue } from '../work-out/computation.ts';
import { type House, limitOf, measured } from './house.ts';
import type { Given } from './house-computation.ts';

/** A value taken from an answer. */
export const ofAnswer = (question: string, value: number, dimension: Dimension): Given => ({
  value,
  shown: [{ id: question, from: 'answer', dimension, value }],
});

/** A choice among the inputs of a computation, made by the option of an answer. */
export const ofOption = (question: string, option: string, value: string): Given => ({
  value,
  shown: [{ id: question, from: 'answer', value: option }],
});

/** A measured answer at a spot, or nothing when it is not known there. */
export function ofMeasure(
  house: House,
  question: string,
  dimension: Dimension,
  spot: Spot = {},
): Given | undefined {
  const value = measured(house, question, spot);
  return typeof value === 'number' ? ofAnswer(question, value, dimension) : undefined;
}

/** A limit of the place, times a factor where the computation counts otherwise. */
export function ofLimit(house: House, id: string, dimension: Dimension, factor = 1): Given | undefined {
  const value = limitOf(house, id);
  if (value === undefined) return undefined;
  return { value: value * factor, shown: [{ id, from: 'limit', dimension, value: value * factor }] };
}

/** A value taken for granted, under a name. */
export const assumed = (id: string, value: number, dimension: Dimension): Given => ({
  value,
  shown: [{ id, from: 'assumed', dimension, value }],
});

/** A value that is not shown itself, since it says what is looked at. */
export const plain = (value: InputValue): Given => ({ value, shown: [] });

/** A value worked out from others; the others are shown. */
export const derived = (value: InputValue, ...from: readonly Given[]): Given => ({
  value,
  shown: from.flatMap((one) => one.shown),
});

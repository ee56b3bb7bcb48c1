import type { Spot } from '../../answers/condition.ts';
import { CONVERSIONS, dimensionOf, fromBase, type UnitId } from '../../quantities/index.ts';
import type { House } from './house.ts';
import { outcomeAt } from './outcome.ts';

const isUnit = (name: string): name is UnitId => Object.hasOwn(CONVERSIONS, name);

/**
 * The number under a name at a spot: `crown-gap` (its first value), `crown-gap.short`, `gravel.covered.sqft`; in the
 * base unit where no unit is named. Nothing when it cannot be worked out.
 */
export function computedNumber(house: House, name: string, spot: Spot): number | undefined {
  const [id = '', valueId, unit] = name.split('.');
  const outcome = outcomeAt(house, id, spot);
  if (outcome?.kind !== 'result') return undefined;
  const value = valueId === undefined ? outcome.values[0] : outcome.values.find((one) => one.id === valueId);
  if (value === undefined) return undefined;
  if (unit === undefined) return value.value;
  return isUnit(unit) && dimensionOf(unit) === value.dimension ? fromBase(value.value, unit) : undefined;
}

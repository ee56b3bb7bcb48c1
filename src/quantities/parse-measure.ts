import { dimensionOf, type UnitId } from './conversions.ts';
import type { Marked } from './mark-pieces.ts';
import { type Amount, readAmount, readFraction, skip } from './parse-amount.ts';
import { toBase } from './units.ts';

/** An amount with its unit, or without one; `extra` is what smaller units add, in the base unit. */
export type Measure = {
  readonly least: number;
  readonly most: number;
  readonly unit: UnitId | undefined;
  readonly extra: number;
  readonly next: number;
};

const SMALLER: Readonly<Partial<Record<UnitId, UnitId>>> = { ft: 'in', yd: 'ft', m: 'cm' };

function smallerUnit(unit: UnitId, other: UnitId): boolean {
  return dimensionOf(unit) === dimensionOf(other) && toBase(1, other) < toBase(1, unit);
}

function unitAfter(pieces: readonly Marked[], amount: Amount): { unit: UnitId | undefined; next: number } {
  const at = skip(pieces, amount.next, 'hyphen', 'of', 'article');
  const unit = pieces[at]?.unit;
  return unit === undefined ? { unit, next: amount.next } : { unit, next: at + 1 };
}

/** `2 foot 6`, `2 m 50`: a bare number after a unit counts in the next smaller one, when it can. */
function bareSmaller(measure: Measure, unit: UnitId, amount: Amount): Measure | undefined {
  const smaller = SMALLER[unit];
  if (smaller === undefined) return undefined;
  const fits =
    unit === 'm' ? amount.least >= 10 && amount.least < 100 : toBase(amount.most, smaller) < toBase(1, unit);
  return fits
    ? { ...measure, extra: measure.extra + toBase(amount.least, smaller), next: amount.next }
    : undefined;
}

function addSmaller(pieces: readonly Marked[], measure: Measure, allowAnd: boolean): Measure | undefined {
  const { unit } = measure;
  if (unit === undefined) return undefined;
  const joiner = pieces[measure.next]?.role;
  const joined = joiner === 'comma' || joiner === 'hyphen' || (allowAnd && joiner === 'and');
  const start = joined ? measure.next + 1 : measure.next;
  if (allowAnd && joiner === 'and') {
    const part = readFraction(pieces, start);
    if (part !== undefined && unitAfter(pieces, part).unit === undefined) {
      return { ...measure, extra: measure.extra + toBase(part.least, unit), next: part.next };
    }
  }
  const amount = readAmount(pieces, start);
  if (amount === undefined) return undefined;
  const { unit: second, next } = unitAfter(pieces, amount);
  if (second === undefined)
    return joined && joiner !== 'and' ? undefined : bareSmaller(measure, unit, amount);
  const adds = smallerUnit(unit, second) && toBase(amount.most, second) < toBase(1, unit);
  return adds ? { ...measure, unit, extra: measure.extra + toBase(amount.least, second), next } : undefined;
}

/** Reads one measure such as `2 ft 6 in`, `80cm`, `a foot and a half` or a bare `10`. */
export function readMeasure(pieces: readonly Marked[], from: number, allowAnd = true): Measure | undefined {
  const amount = readAmount(pieces, from);
  if (amount === undefined) return undefined;
  const { unit, next } = unitAfter(pieces, amount);
  let measure: Measure = { least: amount.least, most: amount.most, unit, extra: 0, next };
  for (;;) {
    const longer = addSmaller(pieces, measure, allowAnd);
    if (longer === undefined) return measure;
    measure = { ...longer, unit: measure.unit };
    if (measure.extra === 0) return measure;
  }
}

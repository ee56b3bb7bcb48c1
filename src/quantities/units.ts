import { CONVERSIONS, type UnitId } from './conversions.ts';

declare const unitOf: unique symbol;

/** A number that carries its base unit in its type, so that feet cannot be added to metres by mistake. */
export type Quantity<Unit extends string> = number & { readonly [unitOf]: Unit };

export type Metres = Quantity<'metres'>;
export type SquareMetres = Quantity<'squareMetres'>;
export type CubicMetres = Quantity<'cubicMetres'>;
export type Degrees = Quantity<'degrees'>;
export type Percent = Quantity<'percent'>;
export type Watts = Quantity<'watts'>;
export type WattsPerSquareMetre = Quantity<'wattsPerSquareMetre'>;
export type Kelvins = Quantity<'kelvins'>;
export type Kilograms = Quantity<'kilograms'>;
export type MetresPerSecond = Quantity<'metresPerSecond'>;

/** Marks a plain number that is already in metres. */
export const metres = (value: number): Metres => value as Metres;
/** Marks a plain number that is already in square metres. */
export const squareMetres = (value: number): SquareMetres => value as SquareMetres;
/** Marks a plain number that is already in cubic metres. */
export const cubicMetres = (value: number): CubicMetres => value as CubicMetres;
/** Marks a plain number that is already in degrees of arc. */
export const degrees = (value: number): Degrees => value as Degrees;
/** Marks a plain number that is already a percentage. */
export const percent = (value: number): Percent => value as Percent;
/** Marks a plain number that is already in watts. */
export const watts = (value: number): Watts => value as Watts;
/** Marks a plain number that is already in watts per square metre. */
export const wattsPerSquareMetre = (value: number): WattsPerSquareMetre => value as WattsPerSquareMetre;
/** Marks a plain number that is already in kelvins. */
export const kelvins = (value: number): Kelvins => value as Kelvins;
/** Marks a plain number that is already in kilograms. */
export const kilograms = (value: number): Kilograms => value as Kilograms;
/** Marks a plain number that is already in metres per second. */
export const metresPerSecond = (value: number): MetresPerSecond => value as MetresPerSecond;

/**
 * Converts a value in any listed unit to the base unit of its dimension, to 15 digits, so that 3 in and a quarter of a
 * foot are the same number.
 */
export function toBase(value: number, unit: UnitId): number {
  const { factor, offset } = CONVERSIONS[unit];
  return Number(((value + offset) * factor).toPrecision(15));
}

/** Converts a value in the base unit of a dimension to any listed unit of that dimension. */
export function fromBase(value: number, unit: UnitId): number {
  const { factor, offset } = CONVERSIONS[unit];
  return value / factor - offset;
}

/** Metres in so many feet. */
export const feet = (value: number): Metres => metres(toBase(value, 'ft'));
/** Metres in so many inches. */
export const inches = (value: number): Metres => metres(toBase(value, 'in'));
/** Square metres in so many square feet. */
export const squareFeet = (value: number): SquareMetres => squareMetres(toBase(value, 'sqft'));
/** Square metres in so many square inches. */
export const squareInches = (value: number): SquareMetres => squareMetres(toBase(value, 'sqin'));
/** Watts per square metre in so many kilowatts per square metre. */
export const kilowattsPerSquareMetre = (value: number): WattsPerSquareMetre =>
  wattsPerSquareMetre(toBase(value, 'kW/m2'));

/** The kinds of quantity the tool knows; each has one base unit. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'angle'
  | 'slope'
  | 'power'
  | 'heatFlux'
  | 'temperature'
  | 'mass'
  | 'time'
  | 'speed'
  | 'pressure'
  | 'fraction'
  | 'count';

type Conversion<D extends Dimension = Dimension> = {
  readonly dimension: D;
  /** base = (value + offset) * factor */
  readonly factor: number;
  readonly offset: number;
  /** How the unit is written after a number. */
  readonly symbol: string;
};

const FOOT = 0.3048;
const INCH = 0.0254;
const YARD = 0.9144;
const CUBIC_INCH = INCH ** 3;
const GALLON = 231 * CUBIC_INCH;
const POUND = 0.45359237;
const BTU_JOULES = 1055.05585262;

const unit = <D extends Dimension>(
  dimension: D,
  factor: number,
  symbol: string,
  offset = 0,
): Conversion<D> => ({
  dimension,
  factor,
  offset,
  symbol,
});

/**
 * Every unit that can be read or shown, with its exact factor to the base unit of its dimension.
 * Exact by definition: yard 0.9144 m and pound 0.45359237 kg (international yard and pound agreement, 1959),
 * so inch 0.0254 m and foot 0.3048 m; US gallon 231 cubic inches; acre 43,560 square feet; Btu (IT)
 * 1055.05585262 J; all as listed in NIST Special Publication 811 (2008), appendix B.
 */
export const CONVERSIONS = {
  mm: unit('length', 0.001, 'mm'),
  cm: unit('length', 0.01, 'cm'),
  m: unit('length', 1, 'm'),
  km: unit('length', 1000, 'km'),
  in: unit('length', INCH, 'in'),
  ft: unit('length', FOOT, 'ft'),
  yd: unit('length', YARD, 'yd'),
  mi: unit('length', 1609.344, 'mi'),
  sqmm: unit('area', 1e-6, 'sq mm'),
  sqcm: unit('area', 1e-4, 'sq cm'),
  sqm: unit('area', 1, 'sq m'),
  sqin: unit('area', INCH ** 2, 'sq in'),
  sqft: unit('area', FOOT ** 2, 'sq ft'),
  sqyd: unit('area', YARD ** 2, 'sq yd'),
  acre: unit('area', 43_560 * FOOT ** 2, 'acres'),
  ha: unit('area', 10_000, 'ha'),
  ml: unit('volume', 1e-6, 'ml'),
  litre: unit('volume', 0.001, 'litres'),
  cum: unit('volume', 1, 'cu m'),
  cuin: unit('volume', CUBIC_INCH, 'cu in'),
  cuft: unit('volume', FOOT ** 3, 'cu ft'),
  cuyd: unit('volume', YARD ** 3, 'cu yd'),
  floz: unit('volume', GALLON / 128, 'fl oz'),
  gal: unit('volume', GALLON, 'gal'),
  degree: unit('angle', 1, 'degrees'),
  percent: unit('slope', 1, '%'),
  W: unit('power', 1, 'W'),
  kW: unit('power', 1000, 'kW'),
  MW: unit('power', 1e6, 'MW'),
  'Btu/h': unit('power', BTU_JOULES / 3600, 'Btu/h'),
  'Btu/s': unit('power', BTU_JOULES, 'Btu/s'),
  'W/m2': unit('heatFlux', 1, 'W/sq m'),
  'kW/m2': unit('heatFlux', 1000, 'kW/sq m'),
  'Btu/h/ft2': unit('heatFlux', BTU_JOULES / 3600 / FOOT ** 2, 'Btu/h per sq ft'),
  K: unit('temperature', 1, 'K'),
  C: unit('temperature', 1, 'C', 273.15),
  F: unit('temperature', 5 / 9, 'F', 459.67),
  kg: unit('mass', 1, 'kg'),
  lb: unit('mass', POUND, 'lb'),
  tonne: unit('mass', 1000, 't'),
  ton: unit('mass', 2000 * POUND, 'short tons'),
  s: unit('time', 1, 's'),
  min: unit('time', 60, 'min'),
  h: unit('time', 3600, 'h'),
  'm/s': unit('speed', 1, 'm/s'),
  'ft/min': unit('speed', FOOT / 60, 'ft/min'),
  mph: unit('speed', 1609.344 / 3600, 'mph'),
  Pa: unit('pressure', 1, 'Pa'),
  fraction: unit('fraction', 1, ''),
  each: unit('count', 1, ''),
} as const satisfies Record<string, Conversion>;

/** Identifier of a unit in the conversion table. */
export type UnitId = keyof typeof CONVERSIONS;

/** Units of one dimension. */
export type UnitOf<D extends Dimension> = {
  [U in UnitId]: (typeof CONVERSIONS)[U]['dimension'] extends D ? U : never;
}[UnitId];

/** The dimension a unit measures. */
export const dimensionOf = (id: UnitId): Dimension => CONVERSIONS[id].dimension;

import type { Dimension, UnitId } from './conversions.ts';
import {
  roundToStep,
  type Said,
  type SayOptions,
  sayLength,
  type UnitSystem,
  withSymbol,
} from './say-length.ts';
import { slopeDegrees } from './slope.ts';
import { type CubicMetres, fromBase, metres, type Percent, percent, type SquareMetres } from './units.ts';

/** A value in a unit, rounded to two significant digits under ten and three above; plain numbers to three. */
function sayIn(base: number, unit: UnitId, options: SayOptions): Said {
  const value = fromBase(base, unit);
  if (value === 0) return withSymbol(0, unit);
  const digits = Math.abs(value) < 10 && unit !== 'each' ? 2 : 3;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value)) + 1e-12) - digits + 1);
  return withSymbol(roundToStep(value, Math.min(step, 1), options), unit);
}

/** Says an area: square inches under a square foot, square feet, acres from one acre; square metres, hectares. */
export function sayArea(area: SquareMetres, system: UnitSystem, options: SayOptions = {}): Said {
  if (system === 'metric') return sayIn(area, area < 0.01 ? 'sqcm' : area < 10_000 ? 'sqm' : 'ha', options);
  const inSquareFeet = fromBase(area, 'sqft');
  return sayIn(area, inSquareFeet < 4 ? 'sqin' : inSquareFeet < 43_560 ? 'sqft' : 'acre', options);
}

/** Says a volume: cubic inches, cubic feet, cubic yards from one; litres, cubic metres from one. */
export function sayVolume(volume: CubicMetres, system: UnitSystem, options: SayOptions = {}): Said {
  if (system === 'metric')
    return sayIn(volume, volume < 0.001 ? 'ml' : volume < 1 ? 'litre' : 'cum', options);
  const inCubicFeet = fromBase(volume, 'cuft');
  return sayIn(volume, inCubicFeet < 0.1 ? 'cuin' : inCubicFeet < 27 ? 'cuft' : 'cuyd', options);
}

/** Says a slope as percent with its angle: `20 % (11 degrees)`; the value is the percent. */
export function saySlope(slope: Percent, options: SayOptions = {}): Said {
  const value = roundToStep(slope, 1, options);
  const angle = roundToStep(slopeDegrees(percent(slope)), 1, options);
  return { value, unit: 'percent', text: `${value} % (${angle} degrees)` };
}

const OTHER_UNITS: Readonly<Partial<Record<Dimension, Readonly<Record<UnitSystem, UnitId>>>>> = {
  angle: { imperial: 'degree', metric: 'degree' },
  power: { imperial: 'kW', metric: 'kW' },
  heatFlux: { imperial: 'kW/m2', metric: 'kW/m2' },
  temperature: { imperial: 'F', metric: 'C' },
  mass: { imperial: 'lb', metric: 'kg' },
  speed: { imperial: 'ft/min', metric: 'm/s' },
  pressure: { imperial: 'Pa', metric: 'Pa' },
  time: { imperial: 's', metric: 's' },
  fraction: { imperial: 'fraction', metric: 'fraction' },
  count: { imperial: 'each', metric: 'each' },
};

/** Says a value in the base unit of any dimension. */
export function sayQuantity(
  base: number,
  dimension: Dimension,
  system: UnitSystem,
  options: SayOptions = {},
): Said {
  switch (dimension) {
    case 'length':
      return sayLength(metres(base), system, options);
    case 'area':
      return sayArea(base as SquareMetres, system, options);
    case 'volume':
      return sayVolume(base as CubicMetres, system, options);
    case 'slope':
      return saySlope(percent(base), options);
    default:
      return sayIn(base, OTHER_UNITS[dimension]?.[system] ?? 'each', options);
  }
}

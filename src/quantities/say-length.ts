import { CONVERSIONS, type UnitId } from './conversions.ts';
import { fromBase, type Metres } from './units.ts';

export type UnitSystem = 'imperial' | 'metric';

/** A quantity ready to show: the number in `unit`, and the text with its unit. */
export type Said = { readonly value: number; readonly unit: UnitId; readonly text: string };

/** Which way to round: up for a least distance, down for a most. */
export type SayOptions = { readonly round?: 'nearest' | 'up' | 'down' };

/** Rounds to a multiple of a step, forgiving floating-point noise of a billionth. */
export function roundToStep(value: number, step: number, { round = 'nearest' }: SayOptions = {}): number {
  const steps = value / step;
  const slack = 1e-9 * Math.max(1, Math.abs(steps));
  const whole = {
    nearest: Math.floor(steps + 0.5 + slack),
    up: Math.ceil(steps - slack),
    down: Math.floor(steps + slack),
  }[round];
  return Number((whole * step).toPrecision(12));
}

/** A number and the symbol of its unit, with thousands separators. */
export function withSymbol(value: number, unit: UnitId): Said {
  const number = value.toLocaleString('en-US', { maximumFractionDigits: 6 });
  return { value, unit, text: `${number} ${CONVERSIONS[unit].symbol}`.trim() };
}

function fractionText(value: number, parts: number): string {
  const whole = Math.floor(value + 1e-9);
  let top = Math.round((value - whole) * parts);
  let bottom = parts;
  if (top === 0) return `${whole}`;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** Small gaps are said as a fraction only when it is true within two in a hundred. */
function sayInches(value: number, options: SayOptions): Said {
  for (const parts of [16, 32]) {
    const rounded = roundToStep(value, 1 / parts, options);
    if (rounded > 0 && Math.abs(rounded - value) <= 0.02 * value) {
      return { value: rounded, unit: 'in', text: `${fractionText(rounded, parts)} in` };
    }
  }
  if (value === 0) return withSymbol(0, 'in');
  const step = value >= 1 ? 1 / 8 : 10 ** (Math.floor(Math.log10(value)) - 1);
  const rounded = roundToStep(value, step, options);
  if (value >= 1) return { value: rounded, unit: 'in', text: `${fractionText(rounded, 8)} in` };
  return withSymbol(rounded, 'in');
}

function sayFeet(lengthFeet: number, options: SayOptions): Said {
  const step = lengthFeet < 20 ? 1 / 12 : 1;
  const rounded = roundToStep(lengthFeet, step, options);
  const wholeFeet = Math.floor(rounded + 1e-9);
  const restInches = Math.round((rounded - wholeFeet) * 12);
  const number = wholeFeet.toLocaleString('en-US');
  const text = restInches === 0 ? `${number} ft` : `${number} ft ${restInches} in`;
  return { value: rounded, unit: 'ft', text };
}

function sayMetric(length: Metres, options: SayOptions): Said {
  const millimetres = length * 1000;
  if (millimetres === 0) return withSymbol(0, 'mm');
  if (millimetres < 1) {
    const step = 10 ** (Math.floor(Math.log10(millimetres)) - 1);
    return withSymbol(roundToStep(millimetres, step, options), 'mm');
  }
  if (millimetres < 9.95) return withSymbol(roundToStep(millimetres, 0.1, options), 'mm');
  if (millimetres < 299.5) return withSymbol(roundToStep(millimetres, 1, options), 'mm');
  if (length < 2) return withSymbol(roundToStep(length, 0.05, options), 'm');
  return withSymbol(roundToStep(length, length < 100 ? 0.1 : 1, options), 'm');
}

/**
 * Says a length in a friendly way: `1/8 in`, `2 ft 6 in`, `10 ft`, `3 mm`, `0.8 m`. Rounding: under an inch a
 * true fraction or two digits, to a foot an eighth of an inch, to 20 ft an inch, beyond a foot; metric 0.1 mm,
 * 1 mm from 10 mm, 0.05 m from 0.3 m, 0.1 m from 2 m, 1 m from 100 m.
 */
export function sayLength(length: Metres, system: UnitSystem, options: SayOptions = {}): Said {
  if (system === 'metric') return sayMetric(length, options);
  const lengthInches = fromBase(length, 'in');
  return lengthInches < 11.94 ? sayInches(lengthInches, options) : sayFeet(fromBase(length, 'ft'), options);
}

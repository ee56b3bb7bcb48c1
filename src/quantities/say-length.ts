import { CONVERSIONS, type UnitId } from './conversions.ts';
import { fromBase, type Metres, toBase } from './units.ts';

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

/** From this length on, in metres, a length that comes from feet and inches is said in steps of so much. */
const METRIC_STEPS: readonly (readonly [from: number, step: number])[] = [
  [200, 10],
  [50, 5],
  [15, 1],
  [6, 0.5],
  [1, 0.1],
  [0.3, 0.05],
  [0.1, 0.01],
  [0.02, 0.005],
  [0.0055, 0.001],
  [0.001, 0.0005],
];

const isMultiple = (value: number, step: number): boolean =>
  Math.abs(value / step - Math.round(value / step)) < 1e-6;

/** Somebody measured it in metres: it is round in metric, and not in half inches. */
function isMetricByItself(length: Metres): boolean {
  const grain = length < 0.01 ? 1e-4 : length < 0.1 ? 1e-3 : 0.01;
  return isMultiple(length, grain) && !isMultiple(length, CONVERSIONS.in.factor / 2);
}

function metricStep(length: Metres): number {
  const step = METRIC_STEPS.find(([from]) => length >= from)?.[1];
  return step ?? 10 ** (Math.floor(Math.log10(length)) - 1);
}

function sayMetric(length: Metres, options: SayOptions): Said {
  if (length === 0) return withSymbol(0, 'cm');
  const said = isMetricByItself(length) ? length : roundToStep(length, metricStep(length), options);
  const unit = said < 0.02 - 1e-9 ? 'mm' : said < 1 - 1e-9 ? 'cm' : 'm';
  return withSymbol(Number(fromBase(said, unit).toPrecision(9)), unit);
}

/**
 * Says a length as people do: `1/8 in`, `2 ft 6 in`, `10 ft`, `3 mm`, `15 cm`, `1.5 m`. Imperial: under an inch a true
 * fraction or two digits, to a foot an eighth of an inch, to 20 ft an inch, beyond a foot. Metric: millimetres under
 * 2 cm, centimetres under a metre, and never finer than the feet or inches it came from (6 in 15 cm, 5 ft 1.5 m, 30 ft
 * 9 m); a length that is round in metric keeps its number. The nearest step can lie on the less safe side: by 2 % for
 * the usual limits (5 ft 1.524 m, 100 ft 30.48 m), by 8 % at worst. A limit that was rounded is said with "about" and
 * its own number beside it (see `ownLength`), or is rounded `up` or `down` here.
 */
export function sayLength(length: Metres, system: UnitSystem, options: SayOptions = {}): Said {
  if (system === 'metric') return sayMetric(length, options);
  const lengthInches = fromBase(length, 'in');
  return lengthInches < 11.94 ? sayInches(lengthInches, options) : sayFeet(fromBase(length, 'ft'), options);
}

/**
 * The length as its source has it, in the other units, where the reader's units only come near it: `5 ft` for a limit
 * that a reader of metric sees as 1.5 m; nothing where the number said is the number itself.
 */
export function ownLength(length: Metres, system: UnitSystem): string | undefined {
  const said = sayLength(length, system);
  if (Math.abs(toBase(said.value, said.unit) - length) <= 1e-9) return undefined;
  return sayLength(length, system === 'metric' ? 'imperial' : 'metric').text;
}

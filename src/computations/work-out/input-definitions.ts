import type { Dimension, UnitId, UnsafeEnd } from '../../quantities/index.ts';
import type { ChoiceInput, OutlineInput, QuantityInput } from './computation.ts';

const MOST_SANE: Readonly<Record<Dimension, number>> = {
  length: 10_000,
  area: 1e8,
  volume: 1e6,
  angle: 90,
  slope: 1000,
  power: 1e11,
  heatFlux: 1e7,
  temperature: 5000,
  mass: 1e8,
  time: 1e8,
  speed: 200,
  pressure: 1e6,
  fraction: 100,
  count: 1e6,
};

type Options = {
  readonly default?: number;
  readonly optional?: true;
  readonly unsafe?: UnsafeEnd;
  readonly whole?: true;
  /** Units of bare numbers; the usual ones of the dimension when missing. */
  readonly imperial?: UnitId;
  readonly metric?: UnitId;
};

function quantity(
  dimension: Dimension,
  usual: { readonly imperial: UnitId; readonly metric: UnitId },
  id: string,
  label: string,
  range: readonly [min: number, max: number],
  options: Options,
): QuantityInput {
  return {
    kind: 'quantity',
    id,
    label,
    dimension,
    units: { imperial: options.imperial ?? usual.imperial, metric: options.metric ?? usual.metric },
    min: range[0],
    max: range[1],
    sane: { min: 0, max: Math.max(MOST_SANE[dimension], range[1]) },
    whole: options.whole ?? false,
    unsafeEnd: options.unsafe ?? 'high',
    required: options.default === undefined && options.optional === undefined,
    ...(options.default === undefined ? {} : { default: options.default }),
  };
}

type Maker = (
  id: string,
  label: string,
  range: readonly [min: number, max: number],
  options?: Options,
) => QuantityInput;

const maker =
  (dimension: Dimension, imperial: UnitId, metric: UnitId): Maker =>
  (id, label, range, options = {}) =>
    quantity(dimension, { imperial, metric }, id, label, range, options);

/** Inputs by dimension: id, label, the range the formula covers in base units, and options. */
export const lengthInput: Maker = maker('length', 'ft', 'm');
export const areaInput: Maker = maker('area', 'sqft', 'sqm');
export const volumeInput: Maker = maker('volume', 'cuft', 'litre');
export const slopeInput: Maker = maker('slope', 'percent', 'percent');
export const powerInput: Maker = maker('power', 'kW', 'kW');
export const fluxInput: Maker = maker('heatFlux', 'kW/m2', 'kW/m2');
export const temperatureInput: Maker = maker('temperature', 'F', 'C');
export const speedInput: Maker = maker('speed', 'ft/min', 'm/s');
export const fractionInput: Maker = maker('fraction', 'fraction', 'fraction');
export const countInput: Maker = maker('count', 'each', 'each');

/** A choice of named options; optional when it has a default. */
export const choiceInput = (
  id: string,
  label: string,
  options: readonly { readonly id: string; readonly label: string }[],
  defaultId?: string,
): ChoiceInput => ({
  kind: 'choice',
  id,
  label,
  options: options.map((option) => ({ id: option.id, label: option.label })),
  required: defaultId === undefined,
  ...(defaultId === undefined ? {} : { default: defaultId }),
});

const YES_NO = [
  { id: 'yes', label: 'yes' },
  { id: 'no', label: 'no' },
];

/** Yes or no, `no` unless said. */
export const yesNoInput = (id: string, label: string): ChoiceInput => choiceInput(id, label, YES_NO, 'no');

/** The outline of a house. */
export const outlineInput = (id: string, label: string): OutlineInput => ({
  kind: 'outline',
  id,
  label,
  required: true,
});

import { type Dimension, sayQuantity, type UnitSystem } from '../../quantities/index.ts';

/** A value of a computation with its unit; parts of a whole as percent. */
export const sayNumber = (value: number, dimension: Dimension, units: UnitSystem): string =>
  dimension === 'fraction'
    ? `${Number((value * 100).toPrecision(4))} %`
    : sayQuantity(value, dimension, units).text;

/** The base unit in which the numbers of the JSON output are given. */
export const BASE_UNITS: Readonly<Record<Dimension, string>> = {
  length: 'm',
  area: 'm2',
  volume: 'm3',
  angle: 'degrees',
  slope: 'percent',
  power: 'W',
  heatFlux: 'W/m2',
  temperature: 'K',
  mass: 'kg',
  time: 's',
  speed: 'm/s',
  pressure: 'Pa',
  fraction: '1',
  count: '1',
};

import type { Dimension } from '../../quantities/index.ts';
import { type SourceId, statusOf } from '../tables/source-status.ts';
import type { Assumption, ResultValue } from './computation.ts';

type Maker = (id: string, label: string, value: number) => ResultValue;

const maker =
  (dimension: Dimension): Maker =>
  (id, label, value) => ({ id, label, value, dimension });

/** Values of a result by dimension, in the base unit. */
export const lengthValue: Maker = maker('length');
export const areaValue: Maker = maker('area');
export const volumeValue: Maker = maker('volume');
export const massValue: Maker = maker('mass');
export const angleValue: Maker = maker('angle');
export const slopeValue: Maker = maker('slope');
export const fluxValue: Maker = maker('heatFlux');
export const fractionValue: Maker = maker('fraction');
export const countValue: Maker = maker('count');

/** A value the computation took for granted, with the publication it comes from. */
export const assumed = (value: ResultValue, source: SourceId): Assumption => ({
  ...value,
  source,
  status: statusOf([source]),
});

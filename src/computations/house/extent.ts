import type { Side } from '../../flow/schema/base.ts';
import { derived, ofMeasure } from './given.ts';
import { type House, isUnknown } from './house.ts';
import type { Given } from './house-computation.ts';

/** Questions about the length along the front and the depth of a house. */
export const LENGTH_QUESTION = 'vents.area-length';
export const DEPTH_QUESTION = 'vents.area-width';

/** Length along the front and depth of a house, in metres, when both are known and more than nothing. */
export function extentOf(house: House): { readonly length: Given; readonly depth: Given } | undefined {
  const length = ofMeasure(house, LENGTH_QUESTION, 'length');
  const depth = ofMeasure(house, DEPTH_QUESTION, 'length');
  if (!length || !depth || length.value === 0 || depth.value === 0) return undefined;
  return { length, depth };
}

/** The question about the size of the house that is asked and not answered, or nothing when it is not asked. */
export const openExtent = (house: House): string | undefined =>
  [LENGTH_QUESTION, DEPTH_QUESTION].find((id) => isUnknown(house, id));

/** Length of the wall at a side. */
export function wallAt(house: House, side: Side | undefined): Given | undefined {
  if (side === undefined) return undefined;
  const extent = extentOf(house);
  return side === 'front' || side === 'back' ? extent?.length : extent?.depth;
}

/** Floor area of the house: that of the attic above it and of the space beneath it. */
export function floorArea(house: House): Given | undefined {
  const extent = extentOf(house);
  if (extent === undefined) return undefined;
  return derived(Number(extent.length.value) * Number(extent.depth.value), extent.length, extent.depth);
}

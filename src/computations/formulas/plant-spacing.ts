import { type Metres, metres, type Percent } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/** One class of slope: it holds from `fromPercent` on, until the next class begins. */
export type SlopeClass = {
  readonly fromPercent: number;
  /** Gap between crowns, edge to edge. */
  readonly crownGap: Metres;
  /** Gap between shrubs, as a multiple of their height. */
  readonly shrubGapHeights: number;
};

/** The class of a slope, and whether it lay on the boundary of two (then the steeper one is taken). */
export type SlopeClassFound = { readonly slopeClass: SlopeClass; readonly onBoundary: boolean };

/**
 * Finds the class of a slope. Published tables say 0-20, 20-40 and over 40 and leave the boundaries open: a slope
 * on a boundary belongs to the steeper class, and `onBoundary` says so. Source: uc-anr-spacing. Range: 0 to 200 %.
 */
export function slopeClassOf(slope: Percent, classes: readonly SlopeClass[]): SlopeClassFound | Outside {
  if (!within(slope, 0, 200)) return outside('slope', '0 to 200 %');
  const slack = 1e-9 * Math.max(1, slope);
  const slopeClass = classes.filter((row) => row.fromPercent <= slope + slack).at(-1);
  if (slopeClass === undefined) return outside('slope', 'a slope that the table of classes covers');
  const onBoundary = slopeClass.fromPercent > 0 && Math.abs(slopeClass.fromPercent - slope) <= slack;
  return { slopeClass, onBoundary };
}

/** Gap to leave between shrubs of a height on a slope class. Source: uc-anr-spacing. Range: height to 10 m. */
export function shrubGap(shrubHeight: Metres, slopeClass: SlopeClass): Metres | Outside {
  if (!within(shrubHeight, 0, 10)) return outside('shrubHeight', '0 to 10 m');
  return metres(shrubHeight * slopeClass.shrubGapHeights);
}

/**
 * Clear height from the top of a shrub to the lowest branch above it, and the height of that branch above the
 * ground. Source: uc-anr-spacing (three times the shrub's height). Range: shrub to 10 m, multiple 1 to 10.
 */
export function clearanceOverShrub(
  shrubHeight: Metres,
  heights: number,
): { readonly clear: Metres; readonly branchAboveGround: Metres } | Outside {
  if (!within(shrubHeight, 0, 10)) return outside('shrubHeight', '0 to 10 m');
  if (!within(heights, 1, 10)) return outside('heights', '1 to 10');
  const clear = metres(shrubHeight * heights);
  return { clear, branchAboveGround: metres(clear + shrubHeight) };
}

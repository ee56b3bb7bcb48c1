import { type Degrees, degrees, type Percent, percent } from './units.ts';

/** Angle of a slope given as 100 * rise / run. */
export const slopeDegrees = (slopePercent: Percent): Degrees =>
  degrees((Math.atan(slopePercent / 100) * 180) / Math.PI);

/** Slope as 100 * rise / run of an angle below 90 degrees. */
export const slopePercent = (angle: Degrees): Percent => percent(Math.tan((angle * Math.PI) / 180) * 100);

/** Slope as 100 * rise / run; rise and run in the same unit, run above zero. */
export const slopeFromRise = (rise: number, run: number): Percent => percent((100 * rise) / run);

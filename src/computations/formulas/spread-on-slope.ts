import { type Percent, slopeDegrees } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/**
 * How many times faster a fire runs up a slope than on the flat: exp(0.069 x degrees), close to doubling every
 * ten degrees. Source: as-3959-slope. Range: 0 to 30 degrees (0 to 57.7 %), uphill.
 */
export function spreadUphill(slope: Percent): number | Outside {
  const angle = slopeDegrees(slope);
  if (!within(angle, 0, 30 + 1e-9)) return outside('slope', '0 to 57.7 % (0 to 30 degrees)');
  return Math.exp(0.069 * angle);
}

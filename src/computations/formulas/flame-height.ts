import { type Metres, metres, type Watts } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

const AIR_DENSITY = 1.2;
const AIR_HEAT_CAPACITY = 1005;
const AIR_TEMPERATURE = 293.15;
const GRAVITY = 9.81;

/** Heat release without units, Q* = Q / (rho c T sqrt(g D) D^2), in air at 20 C. */
export const heatReleaseNumber = (heatRelease: Watts, diameter: Metres): number =>
  heatRelease /
  (AIR_DENSITY * AIR_HEAT_CAPACITY * AIR_TEMPERATURE * Math.sqrt(GRAVITY * diameter) * diameter ** 2);

/** Diameter of the circle with the same area as a rectangular base. */
export const equivalentDiameter = (width: Metres, depth: Metres): Metres =>
  metres(Math.sqrt((4 * width * depth) / Math.PI));

/**
 * Mean flame height of a fire on the ground in still air, L / D = 3.7 Q*^0.4 - 1.02. Source: heskestad-1983; other
 * publications print 3.72, 0.23 or 0.235 (in kW and m) for the coefficient, six in a hundred apart.
 * Range: Q* 0.12 to 10,000 and a flame above its base.
 */
export function flameHeight(heatRelease: Watts, diameter: Metres): Metres | Outside {
  if (!within(diameter, 0.01, 100)) return outside('diameter', '0.01 to 100 m');
  const number = heatReleaseNumber(heatRelease, diameter);
  if (!within(number, 0.12, 10_000))
    return outside('heatRelease', 'a heat release number from 0.12 to 10,000');
  const ratio = 3.7 * number ** 0.4 - 1.02;
  if (ratio <= 0) return outside('heatRelease', 'enough heat for a flame above its base');
  return metres(ratio * diameter);
}

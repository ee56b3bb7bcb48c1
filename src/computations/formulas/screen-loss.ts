import type { Metres, MetresPerSecond } from '../../quantities/index.ts';
import { ROUND_WIRE_BETA } from '../tables/round-wire-beta.ts';
import { type Outside, outside, within } from './outside.ts';

/** Kinematic viscosity of air at 20 C, square metres a second: from memory. */
const AIR_VISCOSITY = 1.516e-5;

/** Reynolds number of air through a screen, on the clear opening and the speed before the screen. */
export const screenReynolds = (opening: Metres, speed: MetresPerSecond): number =>
  (speed * opening) / AIR_VISCOSITY;

function beta(reynolds: number): number {
  const above = Math.max(
    1,
    ROUND_WIRE_BETA.findIndex((row) => row.reynolds >= reynolds),
  );
  const high = ROUND_WIRE_BETA[above];
  const low = ROUND_WIRE_BETA[above - 1];
  if (high === undefined || low === undefined) throw new Error('the table of screen coefficients has a gap');
  return low.beta + ((high.beta - low.beta) * (reynolds - low.reynolds)) / (high.reynolds - low.reynolds);
}

/**
 * Pressure loss coefficient of a round-wire screen, beta (1 - a^2) / a^2, on the speed before the screen.
 * Source: blevins-1984, as reproduced in a public library of fluid formulas; linear between the table's rows.
 * Range: open fraction a 0.05 to 0.8, Reynolds number 20 to 400.
 */
export function roundWireScreenLoss(openFraction: number, reynolds: number): number | Outside {
  if (!within(openFraction, 0.05, 0.8)) return outside('openFraction', '0.05 to 0.8');
  if (!within(reynolds, 20, 400)) return outside('reynolds', '20 to 400');
  return (beta(reynolds) * (1 - openFraction ** 2)) / openFraction ** 2;
}

/**
 * Pressure loss coefficient of a thin square-edged grill, (0.5 (1 - a) + (1 - a^2)) / a^2.
 * Source: blevins-1984, as reproduced in a public library of fluid formulas. Range: open fraction a 0.05 to 1.
 */
export function squareEdgeGrillLoss(openFraction: number): number | Outside {
  if (!within(openFraction, 0.05, 1)) return outside('openFraction', '0.05 to 1');
  return (0.5 * (1 - openFraction) + (1 - openFraction ** 2)) / openFraction ** 2;
}

/**
 * Flow left when a screen is changed, as a fraction of the flow before at the same pressure: the square root of
 * the ratio of all losses. `restLoss` is the opening itself without a screen. Definition of a loss coefficient;
 * range: losses of zero or more, not both sums zero.
 */
export function flowLeft(lossBefore: number, lossAfter: number, restLoss: number): number | Outside {
  if (!(lossBefore >= 0)) return outside('lossBefore', 'zero or more');
  if (!(lossAfter + restLoss > 0)) return outside('lossAfter', 'above zero together with the rest');
  return Math.sqrt((restLoss + lossBefore) / (restLoss + lossAfter));
}

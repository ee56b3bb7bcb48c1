import { type Metres, metres } from '../../quantities/index.ts';
import { type Outside, outside } from './outside.ts';

const STEPS = 100;

/**
 * Distance at which a heat that falls with distance drops to a threshold, by halving; the nearest distance when
 * it is below already there. Numerical method, no source. Range: refused when still above at the farthest.
 */
export function distanceBelow(
  fluxAt: (distance: Metres) => number,
  threshold: number,
  nearest: Metres,
  farthest: Metres,
): Metres | Outside {
  if (fluxAt(nearest) <= threshold) return nearest;
  if (!(fluxAt(farthest) <= threshold))
    return outside('distance', `heat that falls below within ${farthest} m`);
  let above: number = nearest;
  let below: number = farthest;
  for (let step = 0; step < STEPS && below - above > 1e-12 * below; step += 1) {
    const middle = (above + below) / 2;
    if (fluxAt(metres(middle)) > threshold) above = middle;
    else below = middle;
  }
  return metres(below);
}

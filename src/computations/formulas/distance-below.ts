import { type Metres, metres } from '../../quantities/index.ts';
import { type Outside, outside } from './outside.ts';

const STEPS = 200;
const CLOSE = 1e-13;

/**
 * Distance at which a heat that falls with distance drops to a threshold; the nearest distance when it is below
 * already there. False position (the Illinois variant) on logarithms, in which heat over distance is nearly straight;
 * numerical method, no source. Range: refused when still above at the farthest.
 */
export function distanceBelow(
  fluxAt: (distance: Metres) => number,
  threshold: number,
  nearest: Metres,
  farthest: Metres,
): Metres | Outside {
  const excess = (logDistance: number) =>
    Math.log(Math.max(fluxAt(metres(Math.exp(logDistance))), Number.MIN_VALUE) / threshold);
  if (fluxAt(nearest) <= threshold) return nearest;
  if (!(fluxAt(farthest) <= threshold))
    return outside('distance', `heat that falls below within ${farthest} m`);
  let [above, below] = [Math.log(nearest), Math.log(farthest)];
  let [over, under] = [excess(above), excess(below)];
  let moved: 'above' | 'below' | undefined;
  for (let step = 0; step < STEPS && below - above > CLOSE; step += 1) {
    const between = (above * under - below * over) / (under - over);
    const inside = between > above && between < below ? between : (above + below) / 2;
    const found = excess(inside);
    if (Math.abs(found) < CLOSE) return metres(Math.exp(inside));
    // An end that stays twice counts half, or the other would creep.
    if (found > 0) {
      if (moved === 'above') under /= 2;
      [above, over, moved] = [inside, found, 'above'];
    } else {
      if (moved === 'below') over /= 2;
      [below, under, moved] = [inside, found, 'below'];
    }
  }
  return metres(Math.exp(below));
}

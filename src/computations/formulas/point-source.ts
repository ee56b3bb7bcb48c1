import {
  type Metres,
  type Watts,
  type WattsPerSquareMetre,
  wattsPerSquareMetre,
} from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/**
 * Heat at a distance from a fire that radiates from a point: fraction x Q / (4 pi R^2), R from the middle of the
 * flame. Source: nureg-1805, eq. 5-1. Range: radiant fraction 0.05 to 0.7, R 0.3 to 1,000 m; too high near by.
 */
export function pointSourceFlux(
  heatRelease: Watts,
  radiantFraction: number,
  distance: Metres,
): WattsPerSquareMetre | Outside {
  if (!within(heatRelease, 0, 1e10)) return outside('heatRelease', '0 to 10,000 MW');
  if (!within(radiantFraction, 0.05, 0.7)) return outside('radiantFraction', '0.05 to 0.7');
  if (!within(distance, 0.3, 1000)) return outside('distance', '0.3 to 1,000 m');
  return wattsPerSquareMetre((radiantFraction * heatRelease) / (4 * Math.PI * distance ** 2));
}

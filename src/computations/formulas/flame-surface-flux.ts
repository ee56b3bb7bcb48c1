import {
  type Metres,
  type Watts,
  type WattsPerSquareMetre,
  wattsPerSquareMetre,
} from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/**
 * Mean heat sent out by the surface of a box-shaped flame: radiant fraction x Q over its four faces and its top.
 * Energy balance of the solid-flame model, nureg-1805 chapter 5. Range: radiant fraction 0.05 to 0.7, sides above
 * 1 cm.
 */
export function flameSurfaceFlux(
  heatRelease: Watts,
  radiantFraction: number,
  box: { readonly width: Metres; readonly depth: Metres; readonly height: Metres },
): WattsPerSquareMetre | Outside {
  if (!within(radiantFraction, 0.05, 0.7)) return outside('radiantFraction', '0.05 to 0.7');
  if (!within(Math.min(box.width, box.depth, box.height), 0.01, 1000))
    return outside('flame', 'sides from 1 cm');
  const surface = 2 * (box.width + box.depth) * box.height + box.width * box.depth;
  return wattsPerSquareMetre((radiantFraction * heatRelease) / surface);
}

import {
  type Metres,
  metres,
  type WattsPerSquareMetre,
  wattsPerSquareMetre,
} from '../../quantities/index.ts';
import type { Outside } from './outside.ts';
import { isOutside } from './outside.ts';
import { facingViewFactor } from './view-factor.ts';

/** An upright radiating rectangle on the ground. */
export type RadiatingFace = {
  readonly width: Metres;
  readonly height: Metres;
  readonly emitted: WattsPerSquareMetre;
};

/**
 * Heat at a point that faces the middle of an upright radiating rectangle, at a height above its foot (held within
 * its height): view factor x heat sent out. Source: bre-187, appendix A. Range: as `facingViewFactor`.
 */
export function heatFromFace(
  face: RadiatingFace,
  distance: Metres,
  height: Metres,
): WattsPerSquareMetre | Outside {
  const up = metres(Math.min(face.height, Math.max(0, height)));
  const factor = facingViewFactor(face.width, face.height, distance, { aside: metres(0), up });
  return isOutside(factor) ? factor : wattsPerSquareMetre(factor * face.emitted);
}

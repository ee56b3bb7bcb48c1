import type { Metres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

const LEAST_DISTANCE = 1e-3;

const covered = (width: number, height: number, distance: number): Outside | undefined => {
  if (!within(distance, LEAST_DISTANCE, 10_000)) return outside('distance', '0.001 to 10,000 m');
  if (!within(width, 0, 10_000)) return outside('width', '0 to 10,000 m');
  if (!within(height, 0, 10_000)) return outside('height', '0 to 10,000 m');
  return undefined;
};

/**
 * View factor of a rectangle from a point that faces one of its corners. Source: bre-187, appendix A, eq. A3
 * (also Howell's catalogue, howell-catalog). Range: sides up to 10 km, distance from 1 mm.
 */
export function cornerViewFactor(width: Metres, height: Metres, distance: Metres): number | Outside {
  const refused = covered(width, height, distance);
  if (refused !== undefined) return refused;
  const x = width / distance;
  const y = height / distance;
  const alongX = Math.sqrt(1 + x * x);
  const alongY = Math.sqrt(1 + y * y);
  return ((x / alongX) * Math.atan(y / alongX) + (y / alongY) * Math.atan(x / alongY)) / (2 * Math.PI);
}

/**
 * View factor of a rectangle from a point in a plane at right angles to it, opposite a corner at the edge where
 * the plane would meet it (a roof or a deck before a burning wall). Source: bre-187, appendix A, eq. A4-A5. Range:
 * as `cornerViewFactor`.
 */
export function perpendicularCornerViewFactor(
  width: Metres,
  height: Metres,
  distance: Metres,
): number | Outside {
  const refused = covered(width, height, distance);
  if (refused !== undefined) return refused;
  const x = width / distance;
  const y = height / distance;
  const alongY = Math.sqrt(1 + y * y);
  return (Math.atan(x) - Math.atan(x / alongY) / alongY) / (2 * Math.PI);
}

/** Where the receiver stands before the rectangle: its foot, from the middle and from the lower edge. */
export type Opposite = { readonly aside: Metres; readonly up: Metres };

function signedCorner(width: number, height: number, distance: Metres): number {
  const part = cornerViewFactor(Math.abs(width) as Metres, Math.abs(height) as Metres, distance);
  return typeof part === 'number' ? part * Math.sign(width) * Math.sign(height) : Number.NaN;
}

/**
 * View factor of a rectangle from a point that faces its plane anywhere, built of four corner rectangles, those
 * beyond an edge taken off. Source: bre-187, appendix A (additive property). Range: as `cornerViewFactor`.
 */
export function facingViewFactor(
  width: Metres,
  height: Metres,
  distance: Metres,
  at: Opposite,
): number | Outside {
  const refused = covered(width, height, distance);
  if (refused !== undefined) return refused;
  const left = width / 2 + at.aside;
  const right = width / 2 - at.aside;
  const above = height - at.up;
  const sum =
    signedCorner(left, at.up, distance) +
    signedCorner(right, at.up, distance) +
    signedCorner(left, above, distance) +
    signedCorner(right, above, distance);
  return Math.max(0, sum);
}

import type { Outline, Point, Polygon } from './outline.ts';

function distanceToSide(point: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const part = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy);
  const held = Math.min(1, Math.max(0, part));
  return Math.hypot(point.x - from.x - dx * held, point.y - from.y - dy * held);
}

/** Distance of a point from a polygon: above zero outside, below zero inside. */
export function signedDistance(point: Point, polygon: Polygon): number {
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let index = 0; index < polygon.length; index += 1) {
    const from = polygon[index] as Point;
    const to = polygon[(index + 1) % polygon.length] as Point;
    nearest = Math.min(nearest, distanceToSide(point, from, to));
    const spans = from.y > point.y !== to.y > point.y;
    if (spans && point.x < ((to.x - from.x) * (point.y - from.y)) / (to.y - from.y) + from.x)
      inside = !inside;
  }
  return inside ? -nearest : nearest;
}

/** Distance of a point from the nearest polygon of an outline; below zero inside. */
export const distanceToOutline = (point: Point, outline: Outline): number =>
  Math.min(...outline.map((polygon) => signedDistance(point, polygon)));

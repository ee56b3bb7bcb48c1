import type { Outline, Point, Polygon } from './outline.ts';

/** Distance of a point from a polygon: above zero outside, below zero inside. */
export function signedDistance(point: Point, polygon: Polygon): number {
  let nearestSquare = Number.POSITIVE_INFINITY;
  let inside = false;
  let from = polygon[polygon.length - 1] as Point;
  for (const to of polygon) {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const px = point.x - from.x;
    const py = point.y - from.y;
    const part = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const awayX = px - dx * part;
    const awayY = py - dy * part;
    nearestSquare = Math.min(nearestSquare, awayX * awayX + awayY * awayY);
    const spans = from.y > point.y !== to.y > point.y;
    if (spans && px < (dx * py) / dy) inside = !inside;
    from = to;
  }
  const nearest = Math.sqrt(nearestSquare);
  return inside ? -nearest : nearest;
}

/** Distance of a point from the nearest polygon of an outline; below zero inside. */
export const distanceToOutline = (point: Point, outline: Outline): number =>
  Math.min(...outline.map((polygon) => signedDistance(point, polygon)));

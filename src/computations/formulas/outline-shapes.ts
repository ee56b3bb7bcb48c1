import type { Metres } from '../../quantities/index.ts';
import {
  bounds,
  counterclockwise,
  type Outline,
  type Point,
  type Polygon,
  type Side,
  type WallStep,
} from './outline.ts';

/** A rectangle with its front left corner at a point. */
export const rectangle = (width: Metres, depth: Metres, at: Point = { x: 0, y: 0 }): Polygon => [
  at,
  { x: at.x + width, y: at.y },
  { x: at.x + width, y: at.y + depth },
  { x: at.x, y: at.y + depth },
];

/** Which corner of a rectangle is cut out of an L. */
export type Corner = { readonly end: 'front' | 'back'; readonly hand: 'left' | 'right' };

/** An L: a rectangle less a smaller rectangle at one corner. */
export function lShape(
  width: Metres,
  depth: Metres,
  cutWidth: Metres,
  cutDepth: Metres,
  corner: Corner,
): Polygon {
  const backRight: Polygon = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: depth - cutDepth },
    { x: width - cutWidth, y: depth - cutDepth },
    { x: width - cutWidth, y: depth },
    { x: 0, y: depth },
  ];
  const mirrored = backRight.map(({ x, y }) => ({
    x: corner.hand === 'left' ? width - x : x,
    y: corner.end === 'front' ? depth - y : y,
  }));
  return counterclockwise(mirrored);
}

const HEADINGS: Readonly<Record<Side, Point>> = {
  front: { x: 0, y: -1 },
  back: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

/** The gap that is left when someone walks round the walls, and the outline they walked. */
export type WalkedOutline = { readonly polygon: Polygon; readonly gapMetres: number };

/** The outline from walls in walking order; `gapMetres` tells how far the end is from the start. */
export function outlineFromWalls(walls: readonly WallStep[]): WalkedOutline {
  const points: Point[] = [{ x: 0, y: 0 }];
  for (const { towards, length } of walls) {
    const last = points.at(-1) ?? { x: 0, y: 0 };
    const heading = HEADINGS[towards];
    points.push({ x: last.x + heading.x * length, y: last.y + heading.y * length });
  }
  const end = points.pop() ?? { x: 0, y: 0 };
  return { polygon: counterclockwise(points), gapMetres: Math.hypot(end.x, end.y) };
}

/** A rectangle on one side of an outline: `along` from the left (or from the front), in the middle when missing. */
export function attachRectangle(
  outline: Outline,
  side: Side,
  size: { readonly width: Metres; readonly depth: Metres; readonly along?: Metres },
): Polygon {
  const box = bounds(outline);
  const across = side === 'front' || side === 'back';
  const room = across ? box.right - box.left : box.back - box.front;
  const start = (across ? box.left : box.front) + (size.along ?? (room - size.width) / 2);
  const corner: Readonly<Record<Side, Point>> = {
    front: { x: start, y: box.front - size.depth },
    back: { x: start, y: box.back },
    left: { x: box.left - size.depth, y: start },
    right: { x: box.right, y: start },
  };
  return across
    ? rectangle(size.width, size.depth, corner[side])
    : rectangle(size.depth, size.width, corner[side]);
}

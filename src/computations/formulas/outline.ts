import { type Metres, metres, type SquareMetres, squareMetres } from '../../quantities/index.ts';

/** A point on the ground in metres: x to the right as you face the front door, y away from you to the back. */
export type Point = { readonly x: number; readonly y: number };

/** Corners of a closed outline, in order, the first not repeated. */
export type Polygon = readonly Point[];

/** The house and what is attached to it, each a simple polygon; together they are one footprint. */
export type Outline = readonly Polygon[];

export type Side = 'front' | 'left' | 'back' | 'right';

/** A wall as someone walks it: which way they go, and how far. */
export type WallStep = { readonly towards: Side; readonly length: Metres };

/** Signed area of a polygon by the shoelace rule, above zero when its corners run counterclockwise. */
export function signedArea(polygon: Polygon): number {
  let twice = 0;
  for (const [index, point] of polygon.entries()) {
    const next = polygon[(index + 1) % polygon.length] ?? point;
    twice += point.x * next.y - point.y * next.x;
  }
  return twice / 2;
}

/** Area of a simple polygon. */
export const polygonArea = (polygon: Polygon): SquareMetres => squareMetres(Math.abs(signedArea(polygon)));

/** Length of the line round a polygon. */
export function perimeter(polygon: Polygon): Metres {
  let total = 0;
  for (const [index, point] of polygon.entries()) {
    const next = polygon[(index + 1) % polygon.length] ?? point;
    total += Math.hypot(next.x - point.x, next.y - point.y);
  }
  return metres(total);
}

/** The same polygon with its corners counterclockwise and doubled corners left out. */
export function counterclockwise(polygon: Polygon): Polygon {
  const distinct = polygon.filter((point, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length] ?? point;
    return Math.hypot(point.x - before.x, point.y - before.y) > 1e-9;
  });
  return signedArea(distinct) < 0 ? [...distinct].reverse() : distinct;
}

const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** True for a polygon of at least three corners and some area whose sides do not cross one another. */
export function isSimple(polygon: Polygon): boolean {
  const count = polygon.length;
  if (count < 3 || !polygon.every((point) => Number.isFinite(point.x) && Number.isFinite(point.y)))
    return false;
  if (Math.abs(signedArea(polygon)) < 1e-9) return false;
  for (let first = 0; first < count; first += 1) {
    for (let second = first + 1; second < count; second += 1) {
      const [a, b] = [polygon[first], polygon[(first + 1) % count]];
      const [c, d] = [polygon[second], polygon[(second + 1) % count]];
      if (a && b && c && d && cross(a, b, c, d)) return false;
    }
  }
  return true;
}

/** Smallest upright rectangle round an outline. */
export function bounds(outline: Outline): { left: number; right: number; front: number; back: number } {
  const points = outline.flat();
  return {
    left: Math.min(...points.map(({ x }) => x)),
    right: Math.max(...points.map(({ x }) => x)),
    front: Math.min(...points.map(({ y }) => y)),
    back: Math.max(...points.map(({ y }) => y)),
  };
}

import { type Metres, metres, type SquareMetres, squareMetres } from '../../quantities/index.ts';
import { type Piece, pointAt, sweptArea } from './boundary-piece.ts';
import { type Cutters, cutByAll, cuttersOf, offsetBoundary } from './offset-boundary.ts';
import { bounds, type Outline, type Point, type Side } from './outline.ts';
import { distanceToOutline } from './signed-distance.ts';

const ORIGIN: Point = { x: 0, y: 0 };

/** Area inside a closed boundary, seen from an origin (any point; it matters only for a boundary that was cut). */
export const areaInside = (boundary: readonly Piece[], origin: Point = ORIGIN): SquareMetres =>
  squareMetres(boundary.reduce((sum, piece) => sum + sweptArea(piece, origin), 0));

/**
 * Area of an outline with all ground within a distance of it. For a convex outline it is Steiner's A + P d + pi d^2;
 * concave outlines and several polygons are exact too. Own method on Green's theorem. Range: any distance >= 0.
 */
export const offsetArea = (outline: Outline, distance: Metres): SquareMetres =>
  areaInside(offsetBoundary(outline, distance));

/** Areas of the bands between distances in rising order, the first from the outline itself. */
export function bandAreas(outline: Outline, distances: readonly Metres[]): readonly SquareMetres[] {
  const areas = [metres(0), ...distances].map((distance) => offsetArea(outline, distance));
  return areas.slice(1).map((area, index) => squareMetres(area - (areas[index] ?? 0)));
}

/** A straight line on the ground; `out` points away from what is kept in. */
export type Edge = { readonly at: Point; readonly out: Point };

function lineAlong({ at, out }: Edge): Cutters {
  const span = 1e5;
  const line: Piece = {
    type: 'line',
    from: { x: at.x - out.y * span, y: at.y + out.x * span },
    to: { x: at.x + out.y * span, y: at.y - out.x * span },
  };
  return cuttersOf([line]);
}

function beyond(pieces: readonly Piece[], edge: Edge): readonly Piece[] {
  const { at, out } = edge;
  const line = lineAlong(edge);
  return pieces
    .flatMap((piece) => cutByAll(piece, line))
    .filter((part) => {
      const middle = pointAt(part, 0.5);
      return (middle.x - at.x) * out.x + (middle.y - at.y) * out.y > 0;
    });
}

const OUT: Readonly<Record<Side, Point>> = {
  front: { x: 0, y: -1 },
  back: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

/** Distance from the outermost part of the house on a side to the lot line there; missing sides have no line. */
export type LotDistances = Readonly<Partial<Record<Side, Metres>>>;

/** Area beyond the lot line on each side, and beyond any of them (ground past a corner counted once). */
export type BeyondLot = {
  readonly bySide: Readonly<Record<Side, SquareMetres>>;
  readonly total: SquareMetres;
};

function lotCorner(box: ReturnType<typeof bounds>, lot: LotDistances): Readonly<Record<Side, number>> {
  return {
    front: box.front - (lot.front ?? 0),
    back: box.back + (lot.back ?? 0),
    left: box.left - (lot.left ?? 0),
    right: box.right + (lot.right ?? 0),
  };
}

/**
 * Area of the ground within a distance of an outline that lies beyond straight lot lines parallel to the sides of
 * the house. Own method: the boundary is cut at the lines and seen from a point on them. Range: lot distances >= 0.
 */
export function areaBeyondLot(
  outline: Outline,
  distance: Metres,
  lot: LotDistances,
  boundary: readonly Piece[] = offsetBoundary(outline, distance),
): BeyondLot {
  const line = lotCorner(bounds(outline), lot);
  const edge = (side: Side): Edge => ({
    at: {
      x: side === 'left' || side === 'right' ? line[side] : 0,
      y: side === 'front' || side === 'back' ? line[side] : 0,
    },
    out: OUT[side],
  });
  const past = (side: Side): readonly Piece[] =>
    lot[side] === undefined ? [] : beyond(boundary, edge(side));
  const alone = (side: Side): SquareMetres => areaInside(past(side), edge(side).at);
  const corner = (end: 'front' | 'back', hand: 'left' | 'right'): number =>
    lot[hand] === undefined ? 0 : areaInside(beyond(past(end), edge(hand)), { x: line[hand], y: line[end] });
  const bySide = { front: alone('front'), left: alone('left'), back: alone('back'), right: alone('right') };
  const twice =
    corner('front', 'left') + corner('front', 'right') + corner('back', 'left') + corner('back', 'right');
  return { bySide, total: squareMetres(bySide.front + bySide.left + bySide.back + bySide.right - twice) };
}

/** Ground that lies both within `ours.distance` of our outline and within `theirs.distance` of a neighbour's. */
export function overlapArea(
  ours: { readonly outline: Outline; readonly distance: Metres },
  theirs: { readonly outline: Outline; readonly distance: Metres },
): SquareMetres {
  const first = offsetBoundary(ours.outline, ours.distance);
  const second = offsetBoundary(theirs.outline, theirs.distance);
  const inside = (pieces: readonly Piece[], cutters: Cutters, other: typeof ours, slack: number) =>
    pieces
      .flatMap((piece) => cutByAll(piece, cutters))
      .filter((piece) => distanceToOutline(pointAt(piece, 0.5), other.outline) < other.distance + slack);
  // The slack keeps one of two boundaries that run together, not both.
  return areaInside([
    ...inside(first, cuttersOf(second), theirs, 1e-9),
    ...inside(second, cuttersOf(first), ours, -1e-9),
  ]);
}

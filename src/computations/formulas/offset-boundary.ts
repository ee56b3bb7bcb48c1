import type { Metres } from '../../quantities/index.ts';
import {
  boxesMeet,
  boxOf,
  cutPiece,
  outwardNormal,
  type Piece,
  type PieceBox,
  pieceLength,
  pointAt,
} from './boundary-piece.ts';
import { cutsBy } from './cross-pieces.ts';
import { counterclockwise, type Outline, type Point, type Polygon } from './outline.ts';
import { signedDistance } from './signed-distance.ts';

const TOUCH = 1e-9;
const STEP = 1e-6;

/** Sides moved outwards by a distance and, at corners that point out, the arcs between them. */
function rawPieces(polygon: Polygon, distance: number): readonly Piece[] {
  const pieces: Piece[] = [];
  for (let index = 0; index < polygon.length; index += 1) {
    const from = polygon[index] as Point;
    const to = polygon[(index + 1) % polygon.length] as Point;
    const after = polygon[(index + 2) % polygon.length] as Point;
    const side = Math.atan2(to.y - from.y, to.x - from.x);
    const out = { x: Math.sin(side) * distance, y: -Math.cos(side) * distance };
    pieces.push({
      type: 'line',
      from: { x: from.x + out.x, y: from.y + out.y },
      to: { x: to.x + out.x, y: to.y + out.y },
    });
    const bend = Math.atan2(after.y - to.y, after.x - to.x) - side;
    const sweep = Math.atan2(Math.sin(bend), Math.cos(bend));
    if (distance > 0 && sweep > 1e-12) {
      pieces.push({ type: 'arc', centre: to, radius: distance, start: side - Math.PI / 2, sweep });
    }
  }
  return pieces;
}

/** Pieces with their boxes, to cut others by. */
export type Cutters = readonly { readonly piece: Piece; readonly box: PieceBox }[];

/** Makes pieces ready to cut others by. */
export const cuttersOf = (pieces: readonly Piece[]): Cutters =>
  pieces.map((piece) => ({ piece, box: boxOf(piece) }));

/** Cuts a piece wherever another may cross it and leaves out slivers. */
export function cutByAll(piece: Piece, others: Cutters): readonly Piece[] {
  const box = boxOf(piece);
  const parts = [0, 1];
  for (const other of others) {
    if (other.piece !== piece && boxesMeet(box, other.box)) parts.push(...cutsBy(piece, other.piece));
  }
  if (parts.length === 2) return [piece];
  parts.sort((a, b) => a - b);
  const length = pieceLength(piece);
  const cut: Piece[] = [];
  for (let index = 1; index < parts.length; index += 1) {
    const [from, to] = [parts[index - 1] ?? 0, parts[index] ?? 1];
    if ((to - from) * length > 1e-12) cut.push(cutPiece(piece, from, to));
  }
  return cut;
}

/** True where another polygon's boundary runs along a piece in the same direction: one of the two is enough. */
function runsAlong(piece: Piece, middle: Point, other: Polygon, distance: number): boolean {
  if (Math.abs(signedDistance(middle, other) - distance) > TOUCH) return false;
  const out = outwardNormal(piece);
  const outer = { x: middle.x + out.x * STEP, y: middle.y + out.y * STEP };
  const inner = { x: middle.x - out.x * STEP, y: middle.y - out.y * STEP };
  return signedDistance(outer, other) > distance && signedDistance(inner, other) < distance;
}

/** True for a polygon whose corners, counterclockwise, all point out. */
function isConvex(polygon: Polygon): boolean {
  return polygon.every((corner, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length] as Point;
    const after = polygon[(index + 1) % polygon.length] as Point;
    return (corner.x - before.x) * (after.y - corner.y) - (corner.y - before.y) * (after.x - corner.x) >= 0;
  });
}

/**
 * Boundary of the ground within a distance of an outline, exact for sides and arcs, convex or not, with courtyards
 * as inner boundaries: of all moved sides and arcs, what lies nearer to no part of the outline. Own method.
 */
export function offsetBoundary(outline: Outline, distance: Metres): readonly Piece[] {
  const polygons = outline.map(counterclockwise);
  const raw = polygons.map((polygon) => rawPieces(polygon, distance));
  const [only] = polygons;
  if (polygons.length === 1 && only !== undefined && isConvex(only)) return raw.flat();
  const cutters = cuttersOf(raw.flat());
  const stays = (piece: Piece, owner: number): boolean => {
    const middle = pointAt(piece, 0.5);
    return polygons.every((polygon, index) => {
      if (signedDistance(middle, polygon) < distance - TOUCH) return false;
      return index >= owner || !runsAlong(piece, middle, polygon, distance);
    });
  };
  return raw.flatMap((pieces, owner) =>
    pieces.flatMap((piece) => cutByAll(piece, cutters)).filter((piece) => stays(piece, owner)),
  );
}

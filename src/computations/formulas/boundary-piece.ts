import type { Point } from './outline.ts';

/** A straight or round piece of a boundary, walked with the region on its left; arcs run counterclockwise. */
export type Piece =
  | { readonly type: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly type: 'arc';
      readonly centre: Point;
      readonly radius: number;
      readonly start: number;
      readonly sweep: number;
    };

/** Point at a part (0 to 1) of the way along a piece. */
export function pointAt(piece: Piece, part: number): Point {
  if (piece.type === 'line') {
    const { from, to } = piece;
    return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
  }
  const angle = piece.start + piece.sweep * part;
  return {
    x: piece.centre.x + piece.radius * Math.cos(angle),
    y: piece.centre.y + piece.radius * Math.sin(angle),
  };
}

/** The part of a piece between two parts of the way along it. */
export function cutPiece(piece: Piece, from: number, to: number): Piece {
  if (piece.type === 'line') return { type: 'line', from: pointAt(piece, from), to: pointAt(piece, to) };
  return { ...piece, start: piece.start + piece.sweep * from, sweep: piece.sweep * (to - from) };
}

/** Unit vector at the middle of a piece that points out of the region. */
export function outwardNormal(piece: Piece): Point {
  if (piece.type === 'arc') {
    const angle = piece.start + piece.sweep / 2;
    return { x: Math.cos(angle), y: Math.sin(angle) };
  }
  const dx = piece.to.x - piece.from.x;
  const dy = piece.to.y - piece.from.y;
  const length = Math.hypot(dx, dy);
  return { x: dy / length, y: -dx / length };
}

/** Length of a piece. */
export const pieceLength = (piece: Piece): number =>
  piece.type === 'arc'
    ? piece.radius * piece.sweep
    : Math.sqrt((piece.to.x - piece.from.x) ** 2 + (piece.to.y - piece.from.y) ** 2);

/** Area swept by a piece as seen from an origin; summed over a closed boundary it is the area (Green's theorem). */
export function sweptArea(piece: Piece, origin: Point): number {
  if (piece.type === 'line') {
    const { from, to } = piece;
    return ((from.x - origin.x) * (to.y - origin.y) - (from.y - origin.y) * (to.x - origin.x)) / 2;
  }
  const { radius, start, sweep } = piece;
  const end = start + sweep;
  const x = piece.centre.x - origin.x;
  const y = piece.centre.y - origin.y;
  const lever = x * (Math.sin(end) - Math.sin(start)) - y * (Math.cos(end) - Math.cos(start));
  return (radius * radius * sweep + radius * lever) / 2;
}

/** An upright rectangle that holds a piece; for an arc, the one round its whole circle. */
export type PieceBox = {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
};

/** Box of a piece, wide enough that pieces which touch have boxes that overlap. */
export function boxOf(piece: Piece): PieceBox {
  const margin = 1e-6;
  if (piece.type === 'arc') {
    const reach = piece.radius + margin;
    const { x, y } = piece.centre;
    return { left: x - reach, right: x + reach, low: y - reach, high: y + reach };
  }
  const { from, to } = piece;
  return {
    left: Math.min(from.x, to.x) - margin,
    right: Math.max(from.x, to.x) + margin,
    low: Math.min(from.y, to.y) - margin,
    high: Math.max(from.y, to.y) + margin,
  };
}

/** True for boxes that overlap. */
export const boxesMeet = (one: PieceBox, other: PieceBox): boolean =>
  one.left <= other.right && other.left <= one.right && one.low <= other.high && other.low <= one.high;

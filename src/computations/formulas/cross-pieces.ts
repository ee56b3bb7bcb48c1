import { type Piece, pieceLength, pointAt } from './boundary-piece.ts';
import type { Point } from './outline.ts';

type Line = Extract<Piece, { type: 'line' }>;
type Arc = Extract<Piece, { type: 'arc' }>;

/** Points where a straight line through two points meets a circle. */
function lineMeetsCircle(line: Line, circle: Arc): readonly Point[] {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  const fx = line.from.x - circle.centre.x;
  const fy = line.from.y - circle.centre.y;
  const a = dx * dx + dy * dy;
  const half = fx * dx + fy * dy;
  const inner = half * half - a * (fx * fx + fy * fy - circle.radius * circle.radius);
  if (inner < 0 || a === 0) return [];
  const root = Math.sqrt(inner);
  return [(-half - root) / a, (-half + root) / a].map((part) => pointAt(line, part));
}

function circlesMeet(first: Arc, second: Arc): readonly Point[] {
  const dx = second.centre.x - first.centre.x;
  const dy = second.centre.y - first.centre.y;
  const apart = Math.hypot(dx, dy);
  if (apart === 0) return [];
  const along = (apart * apart + first.radius * first.radius - second.radius * second.radius) / (2 * apart);
  const inner = first.radius * first.radius - along * along;
  if (inner < 0) return [];
  const across = Math.sqrt(inner);
  const x = first.centre.x + (along * dx) / apart;
  const y = first.centre.y + (along * dy) / apart;
  const step = { x: (-dy * across) / apart, y: (dx * across) / apart };
  return [
    { x: x + step.x, y: y + step.y },
    { x: x - step.x, y: y - step.y },
  ];
}

function linesMeet(first: Line, second: Line): readonly Point[] {
  const ax = first.to.x - first.from.x;
  const ay = first.to.y - first.from.y;
  const bx = second.to.x - second.from.x;
  const by = second.to.y - second.from.y;
  const bottom = ax * by - ay * bx;
  if (Math.abs(bottom) < 1e-15) return [];
  const part = ((second.from.x - first.from.x) * by - (second.from.y - first.from.y) * bx) / bottom;
  return [pointAt(first, part)];
}

function meetings(first: Piece, second: Piece): readonly Point[] {
  if (first.type === 'line') {
    return second.type === 'line' ? linesMeet(first, second) : lineMeetsCircle(first, second);
  }
  return second.type === 'line' ? lineMeetsCircle(second, first) : circlesMeet(first, second);
}

/** Part of the way (0 to 1, or beyond) of a point that lies on the line or circle of a piece. */
export function partOf(piece: Piece, point: Point): number {
  if (piece.type === 'line') {
    const dx = piece.to.x - piece.from.x;
    const dy = piece.to.y - piece.from.y;
    return ((point.x - piece.from.x) * dx + (point.y - piece.from.y) * dy) / (dx * dx + dy * dy);
  }
  const angle = Math.atan2(point.y - piece.centre.y, point.x - piece.centre.x) - piece.start;
  const full = 2 * Math.PI;
  return (((angle % full) + full) % full) / piece.sweep;
}

const NEAR = 1e-6;

/** True for a point, known to lie on the line or circle of a piece, that lies on the piece or at its ends. */
function reaches(piece: Piece, point: Point): boolean {
  const part = partOf(piece, point);
  const slack = NEAR / pieceLength(piece);
  const full = piece.type === 'arc' ? (2 * Math.PI) / piece.sweep : Number.POSITIVE_INFINITY;
  return part <= 1 + slack && (part >= -slack || part >= full - slack);
}

function liesOn(piece: Piece, point: Point): boolean {
  if (piece.type === 'arc') {
    const dx = point.x - piece.centre.x;
    const dy = point.y - piece.centre.y;
    return Math.abs(Math.sqrt(dx * dx + dy * dy) - piece.radius) < NEAR;
  }
  const { from, to } = piece;
  const turned = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return Math.abs(turned) < NEAR * pieceLength(piece);
}

/** Parts of the way along the first piece at which the second crosses it, touches it or ends on it. */
export function cutsBy(first: Piece, second: Piece): readonly number[] {
  const ends = [pointAt(second, 0), pointAt(second, 1)].filter((point) => liesOn(first, point));
  const crossings = meetings(first, second).filter((point) => reaches(second, point));
  return [...crossings, ...ends].map((point) => partOf(first, point)).filter((part) => part > 0 && part < 1);
}

import { type Dimension, dimensionOf, type UnitId } from './conversions.ts';
import { type Marked, markPieces, type Role } from './mark-pieces.ts';
import { ENGLISH_NUMBER_WORDS, type NumberWords } from './number-words.ts';
import { type Measure, readMeasure } from './parse-measure.ts';
import { splitAnswer } from './split-answer.ts';
import { toBase } from './units.ts';

/** Why a text is not a quantity; `explainReason` puts it in words. */
export type NotReadReason =
  | 'empty'
  | 'noNumber'
  | 'negative'
  | 'tooLarge'
  | 'tooSmall'
  | 'otherDimension'
  | 'notUnderstood'
  | 'severalValues'
  | 'ambiguousRatio'
  | 'notFinite';

export type NotRead = { readonly kind: 'notRead'; readonly reason: NotReadReason; readonly detail?: string };

/** A value in the base unit; for a range, the end taken, with both ends (`most` missing when open). */
export type ReadQuantity =
  | NotRead
  | {
      readonly kind: 'exact' | 'range';
      readonly value: number;
      readonly least: number;
      readonly most: number | undefined;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: UnitId;
    };

export type UnsafeEnd = 'low' | 'high';

/** How to read: `unit` for bare numbers, `least` and `most` in the base unit, `unsafeEnd` of a range. */
export type ReadOptions = {
  readonly dimension: Dimension;
  readonly unit: UnitId;
  readonly unsafeEnd: UnsafeEnd;
  readonly least?: number;
  readonly most: number;
  readonly words?: NumberWords;
};

/** An open end ("over 30 feet") is taken this much beyond the number said, so that it lies on the side meant. */
const BEYOND = 0.01;
/** "Nearly" and "just over" are taken as a tenth either way: common practice, no source. */
const NEARLY = 0.1;

const HEDGES: readonly Role[] = [
  'about',
  'lessThan',
  'moreThan',
  'atMost',
  'atLeast',
  'nearly',
  'justOver',
  'filler',
];
const CARRIERS: readonly Role[] = ['number', 'ratio', 'cardinal', 'fraction', 'vague', 'multiplier', 'unit'];

const notRead = (reason: NotReadReason, detail?: string): NotRead =>
  detail === undefined ? { kind: 'notRead', reason } : { kind: 'notRead', reason, detail };

type Ends = { readonly low: Measure; readonly high: Measure; readonly next: number };

const PLACE_ROLES: readonly Role[] = ['place', 'to', 'between', 'lessThan', 'moreThan', 'by'];

/** Leaves out what tells from where it was measured: `10 feet from the house`, `6 ft above the deck`. */
function withoutPlace(marked: readonly Marked[]): readonly Marked[] {
  const lastCarrier = marked.findLastIndex((piece) => CARRIERS.includes(piece.role));
  const start = marked.findIndex((piece, index) => index > lastCarrier && PLACE_ROLES.includes(piece.role));
  return lastCarrier === -1 || start === -1 ? marked : marked.slice(0, start);
}

function readEnds(pieces: readonly Marked[]): Ends | undefined {
  const between = pieces[0]?.role === 'between';
  const low = readMeasure(pieces, between ? 1 : 0, !between);
  if (low === undefined) return undefined;
  const joiner = pieces[low.next]?.role;
  const joins = joiner === 'to' || joiner === 'hyphen' || (between && joiner === 'and');
  const high = joins ? readMeasure(pieces, low.next + 1) : undefined;
  if (high === undefined) return between ? undefined : { low, high: low, next: low.next };
  return { low, high, next: high.next };
}

function leftover(pieces: readonly Marked[], next: number): NotRead | undefined {
  const rest = pieces.slice(next);
  const first = rest.find((piece) => piece.role !== 'comma');
  if (first === undefined) return undefined;
  const another = rest.some((piece) => CARRIERS.includes(piece.role) && piece.role !== 'unit');
  return notRead(another ? 'severalValues' : 'notUnderstood', first.text);
}

type Bounds = { readonly least: number; readonly most: number | undefined; readonly approximate: boolean };

function applyHedges(least: number, most: number, roles: ReadonlySet<Role>, floor: number): Bounds {
  const approximate = roles.has('about');
  if (roles.has('nearly')) return { least: least * (1 - NEARLY), most, approximate: true };
  if (roles.has('justOver')) return { least, most: most * (1 + NEARLY), approximate: true };
  const under = roles.has('lessThan') || roles.has('atMost');
  const over = roles.has('moreThan') || roles.has('atLeast');
  if (least < most || under === over) return { least, most, approximate };
  return under
    ? { least: Math.min(floor, least), most, approximate }
    : { least, most: undefined, approximate };
}

function takeEnd(bounds: Bounds, unsafeEnd: UnsafeEnd): number {
  if (unsafeEnd === 'low') return bounds.least;
  return bounds.most ?? bounds.least * (1 + BEYOND);
}

function measureBase(measure: Measure, unit: UnitId): { least: number; most: number } {
  return {
    least: toBase(measure.least, unit) + measure.extra,
    most: toBase(measure.most, unit) + measure.extra,
  };
}

function readBounds(
  pieces: readonly Marked[],
  roles: ReadonlySet<Role>,
  said: string,
  options: ReadOptions,
): ReadQuantity {
  if (pieces[0]?.role === 'minus' || pieces[0]?.role === 'hyphen') return notRead('negative');
  if (!pieces.some((piece) => CARRIERS.includes(piece.role))) return notRead('noNumber', pieces[0]?.text);
  const ends = readEnds(pieces);
  if (ends === undefined)
    return notRead('notUnderstood', pieces.find((piece) => piece.role === 'unknown')?.text);
  const rest = leftover(pieces, ends.next);
  if (rest !== undefined) return rest;
  const saidUnit = ends.low.unit ?? ends.high.unit;
  const lowUnit = saidUnit ?? options.unit;
  const highUnit = ends.high.unit ?? lowUnit;
  for (const unit of [lowUnit, highUnit]) {
    if (dimensionOf(unit) !== options.dimension) return notRead('otherDimension', unit);
  }
  const low = measureBase(ends.low, lowUnit);
  const high = measureBase(ends.high, highUnit);
  const bounds = applyHedges(
    Math.min(low.least, high.least),
    Math.max(low.most, high.most),
    roles,
    options.least ?? 0,
  );
  const value = takeEnd(bounds, options.unsafeEnd);
  if (!Number.isFinite(value)) return notRead('notFinite');
  if (bounds.least < (options.least ?? 0)) return notRead('tooSmall');
  if (Math.max(value, bounds.most ?? value) > options.most) return notRead('tooLarge');
  const assumed = saidUnit === undefined && value !== 0 ? { assumedUnit: options.unit } : {};
  const kind = bounds.most === undefined || bounds.least < bounds.most ? 'range' : 'exact';
  return {
    kind,
    value,
    least: bounds.least,
    most: bounds.most,
    said,
    approximate: bounds.approximate,
    ...assumed,
  };
}

/**
 * Reads a typed quantity of one dimension, in words, digits and the units of that dimension. Ranges and
 * bounds are taken at the unsafe end; a bare number takes `unit` and says so in `assumedUnit`.
 */
export function readQuantity(text: string, options: ReadOptions): ReadQuantity {
  const said = text.trim();
  if (said === '') return notRead('empty');
  const words = options.words ?? ENGLISH_NUMBER_WORDS;
  const all = withoutPlace(markPieces(splitAnswer(said), words, options.dimension));
  const roles = new Set(all.map((piece) => piece.role));
  const spoken = all.filter((piece) => !HEDGES.includes(piece.role));
  // "in 1978": before a plain number the word is no unit.
  const pieces = options.dimension === 'count' && spoken[0]?.role === 'unit' ? spoken.slice(1) : spoken;
  const meaning = pieces.filter((piece) => piece.role !== 'comma');
  if (meaning.length > 0 && meaning.every((piece) => piece.role === 'nothing')) {
    const zero = Math.max(0, options.least ?? 0);
    return { kind: 'exact', value: zero, least: zero, most: zero, said, approximate: false };
  }
  return readBounds(pieces, roles, said, options);
}

import { markPieces } from './mark-pieces.ts';
import { ENGLISH_NUMBER_WORDS, type NumberWords } from './number-words.ts';
import { type Measure, readMeasure } from './parse-measure.ts';
import { type NotReadReason, readQuantity, type UnsafeEnd } from './read-quantity.ts';
import { slopeDegrees, slopePercent } from './slope.ts';
import { splitAnswer } from './split-answer.ts';
import { type Degrees, degrees, type Percent, percent, toBase } from './units.ts';

/** `percent` and `degrees` are the value to use: for a range its unsafe end. */
export type ReadSlope =
  | { readonly kind: 'notASlope'; readonly reason: NotReadReason; readonly detail?: string }
  | {
      readonly kind: 'slope' | 'range';
      readonly percent: Percent;
      readonly degrees: Degrees;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: 'percent' | 'degree';
    };

export type ReadSlopeOptions = {
  readonly unit?: 'percent' | 'degree';
  /** The steep end unless said otherwise. */
  readonly unsafeEnd?: UnsafeEnd;
  readonly mostPercent?: number;
  readonly words?: NumberWords;
};

const MOST_PERCENT = 500;

function slope(value: number, said: string, approximate: boolean, most: number): ReadSlope {
  if (!Number.isFinite(value)) return { kind: 'notASlope', reason: 'notFinite' };
  if (value > most) return { kind: 'notASlope', reason: 'tooLarge' };
  const steepness = percent(value);
  return { kind: 'slope', percent: steepness, degrees: slopeDegrees(steepness), said, approximate };
}

function wholeMeasure(text: string, words: NumberWords): Measure | undefined {
  const marked = markPieces(splitAnswer(text), words, 'length').filter(
    ({ role }) => role !== 'filler' && role !== 'about',
  );
  const start = marked[0]?.role === 'unit' ? { ...marked[0], role: 'article' as const, text: '' } : undefined;
  const pieces = start === undefined || marked[0] === undefined ? marked : [start, ...marked];
  const measure = readMeasure(pieces, 0);
  return measure !== undefined && measure.next === pieces.length ? measure : undefined;
}

const measured = (measure: Measure, unit: Measure['unit']): number =>
  unit === undefined ? measure.most : toBase(measure.most, unit) + measure.extra;

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Tries every place where a word for "in" could part rise from run: `4 in in 12 in`, `1 foot per 10`. */
function readRatio(
  text: string,
  words: NumberWords,
): { rise: number; run: number; signed: boolean } | undefined {
  const plain = text.toLowerCase().trim();
  const pattern = new RegExp(
    words.rise
      .map((word) => (/^\p{L}/u.test(word) ? `(?<=\\s|\\d)${escaped(word)}(?=\\s|\\d)` : escaped(word)))
      .join('|'),
    'gu',
  );
  for (const match of plain.matchAll(pattern)) {
    const rise = wholeMeasure(plain.slice(0, match.index), words);
    const run = wholeMeasure(plain.slice(match.index + match[0].length), words);
    if (rise === undefined || run === undefined) continue;
    const riseUnit = rise.unit ?? run.unit;
    const runUnit = run.unit ?? rise.unit;
    return { rise: measured(rise, riseUnit), run: measured(run, runUnit), signed: match[0] === ':' };
  }
  const bare = /^(\d+)\s*\/\s*(\d+)$/.exec(plain);
  return bare === null ? undefined : { rise: Number(bare[1]), run: Number(bare[2]), signed: false };
}

function readUnits(
  text: string,
  unit: 'percent' | 'degree',
  options: ReadSlopeOptions,
  most: number,
): ReadSlope {
  const words = options.words === undefined ? {} : { words: options.words };
  const unsafeEnd = options.unsafeEnd ?? 'high';
  const dimension = unit === 'percent' ? 'slope' : 'angle';
  const limit = unit === 'percent' ? most : slopeDegrees(percent(most));
  const read = readQuantity(text, { dimension, unit, unsafeEnd, most: limit, ...words });
  if (read.kind === 'notRead') return { ...read, kind: 'notASlope' };
  const steepness = unit === 'percent' ? percent(read.value) : slopePercent(degrees(read.value));
  return {
    kind: read.kind === 'exact' ? 'slope' : 'range',
    percent: steepness,
    degrees: unit === 'degree' ? degrees(read.value) : slopeDegrees(steepness),
    said: read.said,
    approximate: read.approximate,
    ...(read.assumedUnit === undefined ? {} : { assumedUnit: unit }),
  };
}

/**
 * Reads a slope: `20%`, `11 degrees`, `rises 4 ft in 10`, `4 in 12`, `1:3`, `flat`. A ratio is rise to run; a
 * ratio with a colon and a larger first number is refused, because builders also write run to rise.
 */
export function readSlope(text: string, options: ReadSlopeOptions = {}): ReadSlope {
  const words = options.words ?? ENGLISH_NUMBER_WORDS;
  const most = options.mostPercent ?? MOST_PERCENT;
  const said = text.trim();
  const marked = markPieces(splitAnswer(said), words, 'slope').filter(({ role }) => role !== 'filler');
  const approximate = marked.some(({ role }) => role === 'about');
  const meaning = marked.filter(({ role }) => role !== 'about' && role !== 'comma');
  if (meaning.length > 0 && meaning.every(({ role }) => role === 'flat' || role === 'nothing')) {
    return slope(0, said, approximate, most);
  }
  if (!marked.some(({ unit }) => unit === 'percent' || unit === 'degree')) {
    const ratio = readRatio(said, words);
    if (ratio?.signed && ratio.rise > ratio.run) return { kind: 'notASlope', reason: 'ambiguousRatio' };
    if (ratio !== undefined) return slope((100 * ratio.rise) / ratio.run, said, approximate, most);
  }
  const unit = marked.some((piece) => piece.unit === 'degree') ? 'degree' : (options.unit ?? 'percent');
  return readUnits(said, marked.some((piece) => piece.unit === 'percent') ? 'percent' : unit, options, most);
}

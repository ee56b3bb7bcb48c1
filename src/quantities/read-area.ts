import type { UnitOf } from './conversions.ts';
import { markPieces } from './mark-pieces.ts';
import { ENGLISH_NUMBER_WORDS, type NumberWords } from './number-words.ts';
import { readLength } from './read-length.ts';
import { type NotReadReason, readQuantity, type UnsafeEnd } from './read-quantity.ts';
import { splitAnswer } from './split-answer.ts';
import { type SquareMetres, squareMetres } from './units.ts';

/** `squareMetres` is the value to use: for a range its unsafe end. */
export type ReadArea =
  | { readonly kind: 'notAnArea'; readonly reason: NotReadReason; readonly detail?: string }
  | {
      readonly kind: 'area' | 'range';
      readonly squareMetres: SquareMetres;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: UnitOf<'area'> | UnitOf<'length'>;
    };

export type ReadAreaOptions = {
  /** Unit of a bare number; square feet when not given. */
  readonly unit?: UnitOf<'area'>;
  /** Unit of bare sides in `10 by 12`; feet when not given. */
  readonly sideUnit?: UnitOf<'length'>;
  readonly unsafeEnd: UnsafeEnd;
  readonly mostSquareMetres?: number;
  readonly words?: NumberWords;
};

const MOST_SQUARE_METRES = 1e8;

function sides(text: string, words: NumberWords): readonly [string, string] | undefined {
  const by = markPieces(splitAnswer(text), words, 'length').filter(({ role }) => role === 'by');
  if (by.length !== 1 || by[0] === undefined) return undefined;
  const sign = by[0].text;
  const word = /^\p{L}{2,}$/u.test(sign) ? new RegExp(`\\b${sign}\\b`, 'iu') : sign;
  const [first, second, more] = text.toLowerCase().split(word);
  return first === undefined || second === undefined || more !== undefined ? undefined : [first, second];
}

function readSides(text: string, pair: readonly [string, string], options: ReadAreaOptions): ReadArea {
  const words = options.words === undefined ? {} : { words: options.words };
  const shared = { unsafeEnd: options.unsafeEnd, ...words };
  const bare = options.sideUnit ?? 'ft';
  const second = readLength(pair[1], { unit: bare, ...shared });
  const firstAlone = readLength(pair[0], { unit: bare, ...shared });
  const unitText = /[^\d\s.,/-].*$/u.exec(pair[1].trim())?.[0] ?? '';
  const inherits = firstAlone.kind !== 'notALength' && firstAlone.assumedUnit !== undefined;
  const withUnit = inherits ? readLength(`${pair[0]} ${unitText}`, { unit: bare, ...shared }) : firstAlone;
  const first = withUnit.kind === 'notALength' ? firstAlone : withUnit;
  if (first.kind === 'notALength') return { ...first, kind: 'notAnArea' };
  if (second.kind === 'notALength') return { ...second, kind: 'notAnArea' };
  const assumed = first.assumedUnit ?? second.assumedUnit;
  return {
    kind: first.kind === 'range' || second.kind === 'range' ? 'range' : 'area',
    squareMetres: squareMetres(first.metres * second.metres),
    said: text.trim(),
    approximate: first.approximate || second.approximate,
    ...(assumed === undefined ? {} : { assumedUnit: assumed }),
  };
}

/** Reads an area: `144 square inches`, `12 sq ft`, `half an acre`, `10 by 12 ft`. Never throws. */
export function readArea(text: string, options: ReadAreaOptions): ReadArea {
  const pair = sides(text, options.words ?? ENGLISH_NUMBER_WORDS);
  if (pair !== undefined) return readSides(text, pair, options);
  const unit = options.unit ?? 'sqft';
  const read = readQuantity(text, {
    dimension: 'area',
    unit,
    unsafeEnd: options.unsafeEnd,
    most: options.mostSquareMetres ?? MOST_SQUARE_METRES,
    ...(options.words === undefined ? {} : { words: options.words }),
  });
  if (read.kind === 'notRead') return { ...read, kind: 'notAnArea' };
  return {
    kind: read.kind === 'exact' ? 'area' : 'range',
    squareMetres: squareMetres(read.value),
    said: read.said,
    approximate: read.approximate,
    ...(read.assumedUnit === undefined ? {} : { assumedUnit: unit }),
  };
}

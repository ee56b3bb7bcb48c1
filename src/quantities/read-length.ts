import type { UnitOf } from './conversions.ts';
import type { NumberWords } from './number-words.ts';
import { type NotReadReason, readQuantity, type UnsafeEnd } from './read-quantity.ts';
import { type Metres, metres } from './units.ts';

export type NotALength = {
  readonly kind: 'notALength';
  readonly reason: NotReadReason;
  readonly detail?: string;
};

/** `metres` is the value to use: for a range its unsafe end, with both ends beside it. */
export type ReadLength =
  | NotALength
  | {
      readonly kind: 'length';
      readonly metres: Metres;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: UnitOf<'length'>;
    }
  | {
      readonly kind: 'range';
      readonly metres: Metres;
      readonly lowMetres: Metres;
      /** Missing when the range has no upper end ("over 30 feet"). */
      readonly highMetres?: Metres;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: UnitOf<'length'>;
    };

export type ReadLengthOptions = {
  /** Unit of a bare number; feet when not given. */
  readonly unit?: UnitOf<'length'>;
  readonly unsafeEnd: UnsafeEnd;
  readonly leastMetres?: number;
  /** Longest length that makes sense; 10 km when not given. */
  readonly mostMetres?: number;
  readonly words?: NumberWords;
};

/** Reads a length as people type it; see `ReadLength`. Never throws. */
export function readLength(text: string, options: ReadLengthOptions): ReadLength {
  const unit = options.unit ?? 'ft';
  const read = readQuantity(text, {
    dimension: 'length',
    unit,
    unsafeEnd: options.unsafeEnd,
    least: options.leastMetres ?? 0,
    most: options.mostMetres ?? 10_000,
    ...(options.words === undefined ? {} : { words: options.words }),
  });
  if (read.kind === 'notRead') return { ...read, kind: 'notALength' };
  const assumed = read.assumedUnit === undefined ? {} : { assumedUnit: unit };
  const shared = { metres: metres(read.value), said: read.said, approximate: read.approximate, ...assumed };
  if (read.kind === 'exact') return { kind: 'length', ...shared };
  const top = read.most === undefined ? {} : { highMetres: metres(read.most) };
  return { kind: 'range', lowMetres: metres(read.least), ...top, ...shared };
}

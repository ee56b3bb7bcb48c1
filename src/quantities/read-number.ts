import type { NumberWords } from './number-words.ts';
import { type NotReadReason, readQuantity, type UnsafeEnd } from './read-quantity.ts';

/** `value` is the number to use: for a range its unsafe end, with both ends beside it. */
export type ReadNumber =
  | { readonly kind: 'notANumber'; readonly reason: NotReadReason; readonly detail?: string }
  | { readonly kind: 'number'; readonly value: number; readonly said: string; readonly approximate: boolean }
  | {
      readonly kind: 'range';
      readonly value: number;
      readonly low: number;
      readonly high?: number;
      readonly said: string;
      readonly approximate: boolean;
    };

export type ReadNumberOptions = {
  readonly unsafeEnd: UnsafeEnd;
  readonly least?: number;
  readonly most?: number;
  readonly words?: NumberWords;
};

/** Reads a plain number: digits, number words, "about", thousands separators, ranges. Never throws. */
export function readNumber(text: string, options: ReadNumberOptions): ReadNumber {
  const read = readQuantity(text, {
    dimension: 'count',
    unit: 'each',
    unsafeEnd: options.unsafeEnd,
    least: options.least ?? 0,
    most: options.most ?? 1e9,
    ...(options.words === undefined ? {} : { words: options.words }),
  });
  if (read.kind === 'notRead') return { ...read, kind: 'notANumber' };
  const { value, said, approximate } = read;
  if (read.kind === 'exact') return { kind: 'number', value, said, approximate };
  return {
    kind: 'range',
    value,
    low: read.least,
    ...(read.most === undefined ? {} : { high: read.most }),
    said,
    approximate,
  };
}

const DECADE =
  /^(?:(?:the|in|early|mid|middle|late|built|sometime|about|around|from|i|we|think|guess|believe|it|its|it's|it’s|was|is|a|an|of|back)[\s-]+)*(?:'|’)?((?:1[6-9]|20)?\d0)(?:'|’)?s(?:[\s-]+(?:house|home|ranch|rancher|bungalow|place|build|built|i|we|think|guess))*$/i;

function decadeStart(text: string): number | undefined {
  const digits = DECADE.exec(text.trim())?.[1];
  if (digits === undefined) return undefined;
  return digits.length === 2 ? 1900 + Number(digits) : Number(digits);
}

/**
 * Reads a year: `1978`, `built about 1950`, `nineteen eighty-seven`, `the 70s` (a range), `before 1978`.
 * Years before `least` (1600 when not given) or after `most` are refused.
 */
export function readYear(text: string, options: ReadNumberOptions & { readonly most: number }): ReadNumber {
  const least = options.least ?? 1600;
  const start = decadeStart(text);
  if (start !== undefined) {
    const high = Math.min(start + 9, options.most);
    if (start < least || start > options.most)
      return { kind: 'notANumber', reason: 'notUnderstood', detail: text };
    const value = options.unsafeEnd === 'low' ? start : high;
    return { kind: 'range', value, low: start, high, said: text.trim(), approximate: true };
  }
  const read = readNumber(text, { ...options, least, most: options.most * 1.02 });
  if (read.kind === 'notANumber') return read;
  if (read.kind === 'number') {
    if (read.value > options.most) return { kind: 'notANumber', reason: 'tooLarge' };
    return Number.isInteger(read.value) ? read : { kind: 'notANumber', reason: 'notUnderstood' };
  }
  const low = Math.ceil(read.low);
  const high = Math.min(Math.floor(read.high ?? options.most), options.most);
  return { ...read, low, high, value: options.unsafeEnd === 'low' ? low : high };
}

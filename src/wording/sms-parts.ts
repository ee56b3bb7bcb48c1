import { isGsm7, septetsOf } from './gsm7.ts';

/** Room of a message: 140 octets, less 6 or 7 in each of several parts (3GPP TS 23.040 9.2.3.24.1). */
export const room = {
  gsm7: { alone: 160, part: 153 },
  ucs2: { alone: 70, part: 67 },
} as const;

/** How much room a text takes: septets, or UTF-16 units when it does not fit septets. */
export function lengthOf(text: string, gsm7: boolean): number {
  return gsm7 ? [...text].reduce((sum, one) => sum + (septetsOf(one) ?? 0), 0) : text.length;
}

/** The longest beginning of a word that fits; no escape pair and no character is taken apart. */
function beginningThatFits(word: string, most: number, gsm7: boolean): string {
  let taken = '';
  for (const one of word) {
    if (lengthOf(taken + one, gsm7) > most) break;
    taken += one;
  }
  return taken;
}

/** Breaks words that are longer than a part, such as a link without end. */
function piecesOf(word: string, most: number, gsm7: boolean): string[] {
  const pieces: string[] = [];
  let rest = word;
  while (lengthOf(rest, gsm7) > most) {
    const piece = beginningThatFits(rest, most, gsm7);
    pieces.push(piece);
    rest = rest.slice(piece.length);
  }
  return [...pieces, rest];
}

/**
 * Splits a text into messages at whole words and lines. One that fits is left as it is; each of several has room
 * for a part of a long message, so that a carrier that joins them again never sends more parts than these.
 */
export function splitSms(text: string): readonly string[] {
  const gsm7 = isGsm7(text);
  const { alone, part } = gsm7 ? room.gsm7 : room.ucs2;
  if (lengthOf(text, gsm7) <= alone) return [text];
  const parts: string[] = [];
  let current = '';
  // A separator belongs to the word after it, and is dropped where a part ends.
  for (const [, separator = '', word = ''] of text.matchAll(/([ \n]*)([^ \n]*)/gu)) {
    if (word === '') continue;
    const joined = current === '' ? word : current + separator + word;
    if (lengthOf(joined, gsm7) <= part) {
      current = joined;
      continue;
    }
    if (current !== '') parts.push(current);
    const pieces = piecesOf(word, part, gsm7);
    parts.push(...pieces.slice(0, -1));
    current = pieces.at(-1) ?? '';
  }
  return current === '' ? parts : [...parts, current];
}

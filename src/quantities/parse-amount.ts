import type { Marked, Role } from './mark-pieces.ts';

/** An amount without its unit, and where reading goes on; least and most differ only for words like `few`. */
export type Amount = { readonly least: number; readonly most: number; readonly next: number };

/** Skips pieces of the given roles. */
export function skip(pieces: readonly Marked[], from: number, ...roles: readonly Role[]): number {
  let at = from;
  while (at < pieces.length && roles.includes((pieces[at] as Marked).role)) at += 1;
  return at;
}

const exactly = (value: number, next: number): Amount => ({ least: value, most: value, next });

/** Reads `twenty five`, `two hundred and five`, `nineteen eighty-seven`. */
function readCardinal(pieces: readonly Marked[], from: number): Amount | undefined {
  let at = from;
  let total = 0;
  let group: number | undefined;
  for (;;) {
    const piece = pieces[at];
    if (piece?.role === 'cardinal') {
      if (group === undefined) group = piece.value;
      else if (group >= 20 && group < 100 && group % 10 === 0 && piece.value < 10) group += piece.value;
      else if (group % 100 === 0 && group + total > 0) group += piece.value;
      else if (group >= 16 && group <= 20 && (piece.value >= 10 || piece.value === 0))
        group = group * 100 + piece.value;
      else if (group >= 1600 && group % 10 === 0 && piece.value < 10) group += piece.value;
      else break;
    } else if (piece?.role === 'multiplier' && group !== undefined) {
      if (piece.value === 1000) {
        total += group * 1000;
        group = 0;
      } else group *= piece.value;
    } else break;
    at += 1;
    const joined = skip(pieces, at, 'hyphen');
    const nextIsPart =
      pieces[joined]?.role === 'cardinal' && joined > at && group !== undefined && group >= 20;
    if (nextIsPart) at = joined;
    else if (pieces[at]?.role === 'and' && pieces[at + 1]?.role === 'cardinal' && (group ?? 1) % 100 === 0)
      at += 1;
  }
  return group === undefined ? undefined : exactly(total + group, at);
}

/** Reads `1/2`, `a half`, `three quarters` standing after a whole number or a unit. */
export function readFraction(pieces: readonly Marked[], from: number): Amount | undefined {
  const start = skip(pieces, from, 'article');
  const piece = pieces[start];
  if (piece?.role === 'ratio') return exactly(piece.value, start + 1);
  if (piece?.role === 'fraction') return exactly(piece.value, start + 1);
  if (piece?.role !== 'cardinal' && piece?.role !== 'number') return undefined;
  const part = pieces[skip(pieces, start + 1, 'hyphen')];
  return part?.role === 'fraction'
    ? exactly(piece.value * part.value, skip(pieces, start + 1, 'hyphen') + 1)
    : undefined;
}

function withTail(pieces: readonly Marked[], whole: Amount): Amount {
  const bare = pieces[skip(pieces, whole.next, 'hyphen')];
  if (bare?.role === 'ratio' && bare.value < 1 && Number.isInteger(whole.least)) {
    return exactly(whole.least + bare.value, skip(pieces, whole.next, 'hyphen') + 1);
  }
  if (pieces[whole.next]?.role !== 'and') return whole;
  const part = readFraction(pieces, whole.next + 1);
  return part === undefined || part.least >= 1 ? whole : exactly(whole.least + part.least, part.next);
}

function readDigits(pieces: readonly Marked[], at: number, piece: Marked): Amount {
  const following = pieces[at + 1];
  const grouped =
    following?.role === 'number' && /^\d{3}$/.test(following.text) && /^[1-9]\d{0,2}$/.test(piece.text);
  if (grouped) return exactly(piece.value * 1000 + following.value, at + 2);
  if (following?.role === 'multiplier') return exactly(piece.value * following.value, at + 2);
  return exactly(piece.value, at + 1);
}

/** Reads an amount in digits or words from a place in the pieces; undefined when none stands there. */
export function readAmount(pieces: readonly Marked[], from: number): Amount | undefined {
  const at = skip(pieces, from, 'article');
  const piece = pieces[at];
  if (piece === undefined) return undefined;
  const part = readFraction(pieces, at);
  if (part !== undefined) return { ...part, next: skip(pieces, part.next, 'of', 'article') };
  switch (piece.role) {
    case 'vague':
      return { least: piece.value, most: piece.most, next: skip(pieces, at + 1, 'of', 'article') };
    case 'number':
      return withTail(pieces, readDigits(pieces, at, piece));
    case 'cardinal': {
      const whole = readCardinal(pieces, at);
      return whole === undefined ? undefined : withTail(pieces, whole);
    }
    case 'multiplier':
      return at > from ? exactly(piece.value, at + 1) : undefined;
    case 'unit':
      return at > from ? exactly(1, at) : undefined;
    default:
      return undefined;
  }
}

type TokenKind = 'word' | 'number' | 'fraction' | 'ordinal' | 'mark';

/** One piece of a message in lower case, with where it stands in that lower-case text. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  /** Without a plural ending, so that "vents" and "vent" are the same. */
  readonly stem: string;
  readonly value: number;
  readonly start: number;
  readonly end: number;
}

const PIECE =
  /^-\d+(?:\.\d+)?|\d+\/\d+(?:th|nd|rd|st)?s?|\d+(?:st|nd|rd|th)(?![\p{L}\d])|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+|[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*|[½¼¾⅛⅜⅝⅞⅓⅔]|[^\s]/gu;
const MARKS = ',;:=.!?-/&+|';
const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};
const INCHES = new Set(['in', 'ins', 'inch', 'inches']);
const FEET = new Set(['ft', 'feet', 'foot']);

/** A word without its plural ending. */
export function stemOf(word: string): string {
  const { length } = word;
  if (length < 4 || word.charCodeAt(length - 1) !== 115) return word;
  if (word.endsWith('ss') || word.endsWith('us') || word.endsWith('is')) return word;
  if (length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  return /(?:x|ch|sh|ss|zz)es$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}

const token = (kind: TokenKind, text: string, start: number, end: number, value = Number.NaN): Token => ({
  kind,
  text,
  stem: kind === 'word' ? stemOf(text) : text,
  value,
  start,
  end,
});

/** `1/4"` and `1/4 inches` are the same words, and so are `2'` and `2 feet`. */
function unitWord(text: string, after: Token | undefined, rest: string): string | undefined {
  if (after === undefined || (after.kind !== 'number' && after.kind !== 'fraction')) return undefined;
  if (text === '"' || (INCHES.has(text) && !(text === 'in' && /^ +[a-z]/.test(rest)))) return 'inch';
  return text === "'" || FEET.has(text) ? 'foot' : undefined;
}

/** A dash parts numbers and single letters (`1-3`, `a-c`) only; elsewhere it joins words. */
function parts(before: Token | undefined, rest: string): boolean {
  if (before?.kind === 'number') return /^ ?\d/.test(rest);
  return before?.kind === 'word' && before.text.length === 1 && /^ ?[a-z](?![a-z])/.test(rest);
}

function readPiece(text: string, start: number, lower: string, tokens: readonly Token[]): Token | undefined {
  const end = start + text.length;
  const before = tokens.at(-1);
  const unit = unitWord(text, before, lower.slice(end, end + 3));
  if (unit !== undefined) return token('word', unit, start, end);
  const sign = Object.hasOwn(FRACTIONS, text) ? FRACTIONS[text] : undefined;
  if (sign !== undefined) return token('fraction', sign, start, end);
  const first = text.charCodeAt(0);
  if ((first >= 48 && first <= 57) || ((first === 46 || first === 45) && text.length > 1)) {
    if (text.includes('/')) return token('fraction', text.replace(/[a-z]+$/, ''), start, end);
    const digits = /[a-z]/.test(text);
    const value = Number.parseFloat(text.replaceAll(',', ''));
    return token(digits ? 'ordinal' : 'number', text, start, end, value);
  }
  if (MARKS.includes(text)) {
    return text === '-' && !parts(before, lower.slice(end, end + 3))
      ? undefined
      : token('mark', text, start, end);
  }
  return /^[\p{L}\p{M}]/u.test(text)
    ? token('word', squeeze(text.replaceAll("'", '')), start, end)
    : undefined;
}

/** "yesss" is "yes". */
const squeeze = (word: string): string => (word.length > 3 ? word.replace(/(.)\1{2,}/gu, '$1') : word);

/** Splits a clean lower-case text into words, numbers and the marks that part an answer. */
export function tokenise(lower: string): readonly Token[] {
  const tokens: Token[] = [];
  for (const match of lower.matchAll(PIECE)) {
    const found = readPiece(match[0], match.index, lower, tokens);
    if (found !== undefined) tokens.push(found);
  }
  return tokens;
}

/** The stems of a phrase, without marks; for a phrase of marks only ("?"), the phrase itself. */
export function stemsOf(phrase: string): readonly string[] {
  const stems = tokenise(phrase.normalize('NFC').replace(/[‘’]/g, "'").toLowerCase())
    .filter((one) => one.kind !== 'mark' || one.text === '&')
    .map((one) => one.stem);
  return stems.length > 0 ? stems : [phrase.trim()];
}

/** One piece of a typed answer: a number, a simple fraction, or a word or sign in lower case. */
export type Piece =
  | { readonly type: 'number'; readonly text: string; readonly value: number }
  | { readonly type: 'ratio'; readonly text: string; readonly value: number }
  | { readonly type: 'word'; readonly text: string };

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

function plainSigns(text: string): string {
  return text
    .toLowerCase()
    .replace(/[½⅓⅔¼¾⅕⅛⅜⅝⅞]/g, (sign) => ` ${FRACTION_SIGNS[sign]} `)
    .replace(/[‘’ʼ′`´]/g, "'")
    .replace(/[“”″]|''/g, '"')
    .replace(/[‐-―−]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/(\p{L})'(\p{L})/gu, '$1$2')
    .trim();
}

/**
 * Value of a run of digits with dots or commas: `1,200` is a thousand and two hundred, `2,5` two and a half,
 * `0,125` an eighth, `1.200,5` and `1,200.5` the same number. NaN when the marks make no sense.
 */
export function digitsValue(digits: string): number {
  const lastDot = digits.lastIndexOf('.');
  const lastComma = digits.lastIndexOf(',');
  if (lastComma === -1) return digits.split('.').length > 2 ? Number.NaN : Number(digits);
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(digits)) return Number(digits.replaceAll(',', ''));
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(digits))
    return Number(digits.replaceAll('.', '').replace(',', '.'));
  if (lastDot === -1 && /^\d+,\d+$/.test(digits)) return Number(digits.replace(',', '.'));
  return Number.NaN;
}

const PIECE = /\d+(?:[.,]\d+)*|\.\d+|[\p{L}²³°]+|<=|>=|[^\s]/gu;

/** Splits a typed answer into pieces; `a/b` becomes one ratio, sentence-ending marks are dropped. */
export function splitAnswer(text: string): readonly Piece[] {
  const raw = plainSigns(text).match(PIECE) ?? [];
  const pieces: Piece[] = [];
  for (let index = 0; index < raw.length; index += 1) {
    const word = raw[index] ?? '';
    const isNumber = /^\.?\d/.test(word);
    const below = raw[index + 2] ?? '';
    if (isNumber && raw[index + 1] === '/' && /^\d/.test(below)) {
      const value = digitsValue(word) / digitsValue(below);
      pieces.push({ type: 'ratio', text: `${word}/${below}`, value });
      index += 2;
    } else if (isNumber) {
      pieces.push({ type: 'number', text: word, value: digitsValue(word) });
    } else {
      pieces.push({ type: 'word', text: word });
    }
  }
  return pieces;
}

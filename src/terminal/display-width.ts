const segmenter = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

const emoji = /\p{Emoji_Presentation}|\ufe0f/u;
const invisible = /^[\p{Mn}\p{Me}\p{Cf}]+$/u;

/** Ranges of East Asian wide and fullwidth characters (Unicode Standard Annex 11), joined where blocks touch. */
const wideRanges: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xa960, 0xa97c],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x1f300, 0x1f64f],
  [0x1f900, 0x1f9ff],
  [0x20000, 0x3fffd],
];

/** What people see as single characters: an emoji with its modifiers, a letter with its accents. */
export function graphemes(text: string): readonly string[] {
  return Array.from(segmenter.segment(text), (part) => part.segment);
}

/** Columns that a text takes in a terminal; the text must hold no control characters. */
export function displayWidth(text: string): number {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the range of plain ASCII
  if (/^[\u0000-\u007e]*$/u.test(text)) return text.length;
  return graphemes(text).reduce((sum, grapheme) => sum + graphemeWidth(grapheme), 0);
}

/** 0, 1 or 2 columns. */
export function graphemeWidth(grapheme: string): number {
  if (invisible.test(grapheme)) return 0;
  if (emoji.test(grapheme)) return 2;
  const code = grapheme.codePointAt(0) ?? 0;
  return wideRanges.some(([first, last]) => code >= first && code <= last) ? 2 : 1;
}

import { displayWidth, graphemes, graphemeWidth } from './display-width.ts';

/** What stands before the first row of a paragraph and before the others. */
export interface Indent {
  readonly first: string;
  readonly rest: string;
}

const noIndent: Indent = { first: '', rest: '' };

/**
 * A paragraph in rows of at most `width` columns, broken between words; a word wider than a row is broken
 * inside. Never returns an empty list.
 */
export function wrapText(text: string, width: number, indent: Indent = noIndent): readonly string[] {
  const room = Math.max(1, width - Math.max(displayWidth(indent.first), displayWidth(indent.rest)));
  const rows: string[] = [];
  let row = '';
  for (const word of text.split(/\s+/u).filter((one) => one !== '')) {
    for (const piece of breakWord(word, room)) {
      const joined = row === '' ? piece : `${row} ${piece}`;
      if (row !== '' && displayWidth(joined) > room) {
        rows.push(row);
        row = piece;
      } else row = joined;
    }
  }
  rows.push(row);
  return rows.map((one, index) => (index === 0 ? indent.first : indent.rest) + one);
}

function breakWord(word: string, room: number): readonly string[] {
  if (displayWidth(word) <= room) return [word];
  const pieces: string[] = [];
  let piece = '';
  let width = 0;
  for (const grapheme of graphemes(word)) {
    const more = graphemeWidth(grapheme);
    if (piece !== '' && width + more > room) {
      pieces.push(piece);
      piece = '';
      width = 0;
    }
    piece += grapheme;
    width += more;
  }
  return [...pieces, piece];
}

/** The columns that text is laid out in: at most 80, one less than the terminal has, so that no row wraps by itself. */
export function layoutWidth(columns: number | undefined): number {
  const known = columns !== undefined && columns > 0 ? columns : 80;
  return Math.max(10, Math.min(80, known - 1));
}

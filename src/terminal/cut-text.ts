import { displayWidth, graphemes, graphemeWidth } from './display-width.ts';

/** The beginning of a text in at most `columns`, ended by the sign `cut` (one column) when something is left out. */
export function cutText(text: string, columns: number, cut: string): string {
  if (displayWidth(text) <= columns) return text;
  let kept = '';
  let width = 1;
  for (const grapheme of graphemes(text)) {
    width += graphemeWidth(grapheme);
    if (width > columns) break;
    kept += grapheme;
  }
  return columns < 1 ? '' : kept + cut;
}

/** Characters that take two cells of a terminal: East Asian wide forms and most pictures. */
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** How many cells of a terminal a text takes. */
export function cellsOf(text: string): number {
  let cells = 0;
  for (const character of text) cells += NO_WIDTH.test(character) ? 0 : WIDE.test(character) ? 2 : 1;
  return cells;
}

/** A word in pieces that fit: only a word longer than a whole line is broken. */
function pieces(word: string, width: number): string[] {
  if (cellsOf(word) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const character of word) {
    if (part !== '' && cellsOf(part + character) > width) {
      parts.push(part);
      part = '';
    }
    part += character;
  }
  return [...parts, part];
}

/** A text in lines of at most `width` cells; the lines after the first start with `indent`. */
export function wrap(text: string, width: number, first = '', indent = first): string[] {
  const room = Math.max(2, width - Math.max(cellsOf(first), cellsOf(indent)));
  const lines: string[] = [];
  let line = '';
  for (const word of text
    .split(/\s+/)
    .filter((one) => one !== '')
    .flatMap((one) => pieces(one, room))) {
    if (line !== '' && cellsOf(line) + 1 + cellsOf(word) > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((one, position) => (position === 0 ? first : indent) + one);
}

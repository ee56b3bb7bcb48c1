import { cutText } from '../cut-text.ts';
import { displayWidth, graphemes, graphemeWidth } from '../display-width.ts';
import { drawHouse, drawingExtent } from '../drawing.ts';
import { stripToLine } from '../strip-control.ts';
import type { Symbols } from '../symbols.ts';
import { layoutWidth } from '../wrap-text.ts';
import { clockText, layOutCallMiddle } from './call-frame.ts';
import { layOutChoiceList } from './choice-list.ts';
import type { Editor } from './editor.ts';
import type { FrameInput, LiveFrame, LiveRow, Piece } from './frame.ts';
import { isRoomy, rowsToKeepInSight } from './turn-rows.ts';

const gapColumns = 2;

/**
 * The rows that are drawn again and again: at most 12, always two fewer than the terminal has, and fewer still on a
 * low screen, so that the question above them stays in sight. Three are the least that one can choose with.
 */
export function liveRowLimit(terminalRows: number, rowsAbove: number): number {
  const most = Math.max(1, Math.min(terminalRows - 2, 12));
  return Math.min(most, Math.max(3, terminalRows - 1 - rowsAbove));
}

/** Progress, choices and drawing, the line of keys, and the line being typed, within the limit of rows. */
export function layOutLive(input: FrameInput): LiveFrame {
  const width = layoutWidth(input.columns);
  const above = rowsToKeepInSight(input.turn, { width, roomy: isRoomy(input.terminalRows) });
  const limit = liveRowLimit(input.terminalRows, above);
  const choices = layOutChoiceList(input, width, Number.POSITIVE_INFINITY).length;
  const spare = limit - 1 - Math.min(choices, 3);
  const keys = spare >= 1 ? [keysRow(input, width)] : [];
  const progress = spare >= 2 ? progressRow(input, width) : [];
  const room = limit - progress.length - keys.length - 1;
  const typed = typedRow(input.draft.editor, width, input.symbols);
  const rows = [...progress, ...middle(input, width, room, choices), ...keys, typed.row];
  return { rows, cursor: { x: typed.cursor, y: rows.length - 1 } };
}

function progressRow(input: FrameInput, width: number): readonly LiveRow[] {
  const { turn, phrase, symbols } = input;
  const { stops, stop } = turn.progress;
  const position = stops.findIndex((one) => one.id === stop);
  const at = stops[position];
  const clock = turn.call ? `${clockText(input, turn.call)}  ` : '';
  if (!at) return clock === '' ? [] : [[{ text: clock.trimEnd(), look: 'strong' }]];
  const values = { title: phrase(at.title), number: position + 1, total: stops.length };
  const place = clock + stripToLine(phrase('terminal.place', values));
  const strip = stops.map((one) => symbols[one.state]).join('');
  const fits = strip.length + 1 + displayWidth(place) <= width;
  const text = cutText(place, width, symbols.cut);
  return [
    fits
      ? [
          { text: `${strip} `, look: 'quiet' },
          { text, look: 'strong' },
        ]
      : [{ text, look: 'strong' }],
  ];
}

const keysPhrases = {
  text: 'terminal.keys.text',
  choices: 'terminal.keys.choices',
  several: 'terminal.keys.several',
} as const;

function keysRow({ turn, draft, phrase, symbols }: FrameInput, width: number): LiveRow {
  const { ask } = turn.worded;
  if (turn.call) {
    const text = phrase(draft.page > 0 ? 'call.keys.guide' : 'call.keys');
    return [{ text: cutText(stripToLine(text), width, symbols.cut), look: 'quiet' }];
  }
  const kind = !ask || ask.choices.length === 0 ? 'text' : ask.several ? 'several' : 'choices';
  return [{ text: cutText(stripToLine(phrase(keysPhrases[kind])), width, symbols.cut), look: 'quiet' }];
}

/**
 * Choices with the drawing beside them, or above them on a narrow screen. Choices that would all be in sight without
 * the drawing are not hidden for it.
 */
function middle(input: FrameInput, width: number, room: number, choices: number): readonly LiveRow[] {
  if (input.turn.call) return layOutCallMiddle(input, width, room);
  const wide = drawingExtent('wide');
  const narrow = drawingExtent('narrow');
  const beside = width - wide.columns - gapColumns;
  const alone = layOutChoiceList(input, width, room);
  if (input.turn.progress.stop === undefined) return alone;
  if (beside >= 36 && room >= wide.rows) {
    const fits = layOutChoiceList(input, beside, Number.POSITIVE_INFINITY).length <= room;
    if (!fits && choices <= room) return alone;
    return sideBySide(layOutChoiceList(input, beside, room), drawing(input, 'wide'), beside + gapColumns);
  }
  const roomBelow = room - narrow.rows;
  return width >= narrow.columns && choices <= roomBelow ? [...drawing(input, 'narrow'), ...alone] : alone;
}

function drawing({ turn, symbols }: FrameInput, size: 'wide' | 'narrow'): readonly LiveRow[] {
  const rows = drawHouse(turn.drawing ?? turn.progress.stop, size, symbols.fill);
  return rows.map((row) => row.map(({ text, here }): Piece => ({ text, look: here ? 'accent' : 'quiet' })));
}

function sideBySide(left: readonly LiveRow[], right: readonly LiveRow[], column: number): readonly LiveRow[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, index) => {
    const row = left[index] ?? [];
    const beside = right[index];
    if (!beside) return row;
    const taken = row.reduce((sum, piece) => sum + displayWidth(piece.text), 0);
    return [...row, { text: ' '.repeat(Math.max(0, column - taken)), look: 'plain' }, ...beside];
  });
}

/** The end of a long line stays in sight with the cursor; what was cut on the left is marked. */
function typedRow(editor: Editor, width: number, symbols: Symbols): { row: LiveRow; cursor: number } {
  const prompt = `${symbols.prompt} `;
  const room = width - displayWidth(prompt) - 2;
  const before = stripToLine(editor.before);
  const fits = displayWidth(before) <= room;
  const shown = fits ? before : symbols.cut + lastColumns(before, room - 1);
  const after = cutText(stripToLine(editor.after), room - displayWidth(shown) + 1, symbols.cut);
  const row: LiveRow = [
    { text: prompt, look: 'strong' },
    { text: shown + after, look: 'plain' },
  ];
  return { row, cursor: displayWidth(prompt + shown) };
}

function lastColumns(text: string, columns: number): string {
  let kept = '';
  let width = 0;
  for (const grapheme of [...graphemes(text)].reverse()) {
    width += graphemeWidth(grapheme);
    if (width > columns) break;
    kept = grapheme + kept;
  }
  return kept;
}

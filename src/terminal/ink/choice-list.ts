import { cutText } from '../cut-text.ts';
import { choiceMark } from '../lay-out-turn.ts';
import { stripToLine } from '../strip-control.ts';
import { wrapText } from '../wrap-text.ts';
import type { FrameInput, LiveRow, Piece } from './frame.ts';

/** The choices in at most `room` rows; when they do not all fit, those around the pointer and how many more. */
export function layOutChoiceList(input: FrameInput, width: number, room: number): readonly LiveRow[] {
  const { ask } = input.turn.worded;
  if (!ask || room < 1) return [];
  const items = ask.choices.map((_, index) => choiceRows(input, index, width));
  const heights = items.map((item) => item.length);
  if (sum(heights) <= room) return items.flat();
  const { first, last } = visibleItems(heights, input.draft.pointed ?? 0, Math.max(1, room - 1));
  const shown = items
    .slice(first, last + 1)
    .flat()
    .slice(0, Math.max(1, room - 1));
  return room < 2 ? shown : [...shown, moreRow(input, width, first, ask.choices.length - 1 - last)];
}

/** The page of items, filled from the top, on which `pointed` is; an item higher than the room has a page alone. */
export function visibleItems(
  heights: readonly number[],
  pointed: number,
  room: number,
): { readonly first: number; readonly last: number } {
  let first = 0;
  let used = 0;
  for (const [index, height] of heights.entries()) {
    if (index > first && used + height > room) {
      if (pointed < index) return { first, last: index - 1 };
      first = index;
      used = 0;
    }
    used += height;
  }
  return { first, last: heights.length - 1 };
}

function choiceRows({ turn, draft, symbols }: FrameInput, index: number, width: number): readonly LiveRow[] {
  const ask = turn.worded.ask;
  const choice = ask?.choices[index];
  if (!ask || !choice) return [];
  const pointed = draft.pointed === index;
  const mark = draft.marked.includes(index) ? symbols.chosen : symbols.notChosen;
  const lead = `${pointed ? symbols.pointer : ' '} ${ask.several ? `${mark} ` : ''}`;
  const first = `${lead}${choiceMark(choice, ask.choices.length)} `;
  const rows = wrapText(stripToLine(choice.label), width, { first, rest: ' '.repeat(first.length) });
  return rows.map((text): LiveRow => [{ text, look: pointed ? 'accent' : 'plain' }]);
}

function moreRow({ phrase, symbols }: FrameInput, width: number, above: number, below: number): LiveRow {
  const parts = [
    ...(above > 0 ? [`${symbols.above} ${phrase('terminal.more-above', { count: above })}`] : []),
    ...(below > 0 ? [`${symbols.below} ${phrase('terminal.more-below', { count: below })}`] : []),
  ];
  const piece: Piece = {
    text: cutText(`  ${stripToLine(parts.join('  '))}`, width, symbols.cut),
    look: 'quiet',
  };
  return [piece];
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

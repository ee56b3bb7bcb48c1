import { cutText } from '../cut-text.ts';
import { layOutGuide } from '../lay-out-turn.ts';
import type { CallOnScreen } from '../ports.ts';
import { stripToLine } from '../strip-control.ts';
import { layOutChoiceList } from './choice-list.ts';
import type { FrameInput, LiveRow } from './frame.ts';

const two = (number: number) => String(number).padStart(2, '0');

/** How long a call has lasted, and how long it may: as it is at the moment of drawing. */
export function clockText({ phrase, now }: FrameInput, call: CallOnScreen): string {
  const seconds = Math.max(0, Math.floor(((now?.getTime() ?? 0) - Date.parse(call.since)) / 1000));
  const values = { minutes: String(Math.floor(seconds / 60)), seconds: two(seconds % 60) };
  const { minutes } = call;
  return stripToLine(
    minutes === undefined
      ? phrase('call.clock', values)
      : phrase('call.clock-of', { ...values, limit: String(minutes) }),
  );
}

/** Rows in pages of at most `room` rows. */
function pagesOf(rows: readonly LiveRow[], room: number): LiveRow[][] {
  const size = Math.max(1, room);
  return Array.from({ length: Math.ceil(rows.length / size) }, (_, page) =>
    rows.slice(page * size, (page + 1) * size),
  );
}

/**
 * What a volunteer sees between progress and keys: the choices with what to listen for below them, where both fit;
 * otherwise the choices, and the rest one press of Tab away, in as many pages as it takes.
 */
export function layOutCallMiddle(input: FrameInput, width: number, room: number): readonly LiveRow[] {
  const { ask } = input.turn.worded;
  if (!ask || room < 1) return [];
  const guide = layOutGuide(ask, width).map((row): LiveRow => [{ text: row.text, look: 'quiet' }]);
  const all = layOutChoiceList(input, width, Number.POSITIVE_INFINITY);
  if (all.length + guide.length <= room) return [...all, ...guide];
  const whole = pagesOf(guide, room);
  // A page number takes a row where there is more than one page.
  const pages = whole.length > 1 && room > 1 ? pagesOf(guide, room - 1) : whole;
  const at = input.draft.page % (pages.length + 1);
  const page = pages[at - 1];
  if (!page) return layOutChoiceList(input, width, room);
  if (pages.length < 2 || room < 2) return page;
  const text = stripToLine(input.phrase('call.more-pages', { page: at, pages: pages.length }));
  return [...page, [{ text: cutText(text, width, input.symbols.cut), look: 'quiet' }]];
}

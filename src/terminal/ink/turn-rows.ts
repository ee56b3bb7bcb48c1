import { layOutBlocks, layOutHint, layOutQuestion, type Row } from '../lay-out-turn.ts';
import type { Turn } from '../ports.ts';
import { wrapText } from '../wrap-text.ts';

/** What the screen has room for: columns of text, and whether there are rows to spare. */
export interface Room {
  readonly width: number;
  readonly roomy: boolean;
}

const blank: Row = { text: '', look: 'plain' };

/** A low screen leaves out the hint and the blank row, so that question and choices are in sight together. */
export function isRoomy(terminalRows: number): boolean {
  return terminalRows >= 16;
}

/** What a turn says and asks, for the history: the question is written once, so that no redraw can repeat it. */
export function turnRows(turn: Turn, room: Room): readonly Row[] {
  return [...layOutBlocks(turn, room.width), ...questionRows(turn, room)];
}

/** How many rows of the history, counted from its end, hold the question. */
export function rowsToKeepInSight(turn: Turn, room: Room): number {
  return Math.max(0, questionRows(turn, room).length - 1);
}

/** An answer as it stands in the history. */
export function saidRows(said: string, room: Room): readonly Row[] {
  return wrapText(said, room.width, { first: '> ', rest: '  ' }).map(
    (text): Row => ({ text, look: 'plain' }),
  );
}

function questionRows(turn: Turn, { width, roomy }: Room): readonly Row[] {
  const { ask } = turn.worded;
  if (!ask) return roomy ? [blank] : [];
  const question = layOutQuestion(ask, width);
  return roomy ? [...question, ...layOutHint(ask, width), blank] : question;
}

import type { Phrase, Turn } from '../ports.ts';
import type { Symbols } from '../symbols.ts';
import type { Draft } from './draft.ts';

/** A piece of a row of the live part, and how it may be strengthened. */
export interface Piece {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'quiet' | 'accent';
}
export type LiveRow = readonly Piece[];

/** The live part as it is to be drawn; the cursor stands in its last row. */
export interface LiveFrame {
  readonly rows: readonly LiveRow[];
  readonly cursor: { readonly x: number; readonly y: number };
}

export interface FrameInput {
  readonly turn: Turn;
  readonly draft: Draft;
  readonly columns: number;
  /** Rows of the whole terminal. */
  readonly terminalRows: number;
  readonly phrase: Phrase;
  readonly symbols: Symbols;
  /** For the clock of a call. */
  readonly now?: Date;
}

import type { Readable, Writable } from 'node:stream';
import {
  layOutBlocks,
  layOutChoices,
  layOutGuide,
  layOutHint,
  layOutQuestion,
  type Row,
} from '../lay-out-turn.ts';
import type { Phrase, TerminalConversation, TerminalEnd, Turn } from '../ports.ts';
import { stripToLine } from '../strip-control.ts';
import { endOfTurn } from '../turn-end.ts';
import { layoutWidth, wrapText } from '../wrap-text.ts';
import { createWriter, type Writer } from '../writer.ts';
import { createLineReader, type LineReader } from './line-reader.ts';

export interface PlainOptions {
  readonly conversation: TerminalConversation;
  readonly input: Readable;
  readonly output: Writable;
  readonly phrase: Phrase;
  /** Columns of the output now; `undefined` where it has none, such as a pipe. */
  readonly columns: () => number | undefined;
  /** Write each line read after the prompt: for input that is not typed on the same screen. */
  readonly echo: boolean;
  /** Aborted by Ctrl-C or a closed window. */
  readonly interrupted?: AbortSignal;
}

/**
 * The conversation in lines, without any control sequence: for pipes, logs and screen readers. Ends with the
 * walk, the input, an interruption, or when nobody reads the output any more. Rejects when a turn could not be
 * kept.
 */
export async function runPlain(options: PlainOptions): Promise<TerminalEnd> {
  const writer = createWriter(options.output);
  const reader = createLineReader(options.input, options.interrupted);
  try {
    return await converse(options, writer, reader);
  } finally {
    reader.close();
    writer.release();
  }
}

async function converse(options: PlainOptions, writer: Writer, reader: LineReader): Promise<TerminalEnd> {
  let turn = await options.conversation.hello();
  for (;;) {
    await writer.write(`${toText(turnRows(turn, layoutWidth(options.columns())))}\n> `);
    const line = await reader.next();
    if (line === undefined || writer.isGone()) return pause(options, writer);
    const said = stripToLine(line);
    await writer.write(options.echo ? `${said}\n` : '');
    const before = turn;
    turn = await options.conversation.send({ kind: 'text', text: said });
    const end = endOfTurn(before, turn);
    if (end === undefined) continue;
    await writer.write(toText(turnRows(turn, layoutWidth(options.columns()))));
    return end;
  }
}

async function pause({ columns, phrase }: PlainOptions, writer: Writer): Promise<TerminalEnd> {
  const texts = wrapText(stripToLine(phrase('terminal.paused')), layoutWidth(columns()));
  await writer.write(`\n\n${texts.join('\n')}\n`);
  return 'paused';
}

function turnRows(turn: Turn, width: number): readonly Row[] {
  const { ask } = turn.worded;
  const blocks = layOutBlocks(turn, width);
  if (!ask) return blocks;
  return [
    ...blocks,
    ...layOutQuestion(ask, width),
    ...layOutGuide(ask, width),
    ...layOutChoices(ask, width),
    ...layOutHint(ask, width),
  ];
}

function toText(rows: readonly Row[]): string {
  return rows.map((row) => `${row.text}\n`).join('');
}

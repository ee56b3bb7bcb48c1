import { platform, env as processEnv } from 'node:process';
import type { ReadStream, WriteStream } from 'node:tty';
import { terminalReflows } from '../terminal/ink/screen.ts';
import { loadInteractive } from '../terminal/load-interactive.ts';
import type { Phrase, TerminalConversation, TerminalEnd } from '../terminal/ports.ts';
import { chooseSymbols } from '../terminal/symbols.ts';
import type { CommandIo } from './io.ts';

/** The conversation on the screen; in a file of its own, so that line mode never loads what draws it. */
export async function runInTerminal({
  conversation,
  io,
  phrase,
  interrupted,
  clock,
}: {
  readonly conversation: TerminalConversation;
  readonly io: CommandIo;
  readonly phrase: Phrase;
  readonly interrupted: AbortSignal;
  /** For a call: its clock. */
  readonly clock?: () => Date;
}): Promise<TerminalEnd> {
  const { stdin, stdout, env } = io;
  const runInteractive = await loadInteractive(processEnv);
  return runInteractive({
    conversation,
    stdin: stdin as unknown as ReadStream,
    stdout: stdout as unknown as WriteStream,
    phrase,
    symbols: chooseSymbols(env, platform),
    colour: env['NO_COLOR'] === undefined || env['NO_COLOR'] === '',
    reflows: terminalReflows(env),
    interrupted,
    ...(clock ? { clock } : {}),
  });
}

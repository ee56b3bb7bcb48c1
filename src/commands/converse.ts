import { chooseTerminalMode } from '../terminal/mode.ts';
import type { Phrase, TerminalConversation, TerminalEnd } from '../terminal/ports.ts';
import type { CommandIo } from './io.ts';

/** Holds a conversation in the terminal; what draws on the screen is loaded only when it is used. */
export async function converse(
  conversation: TerminalConversation,
  io: CommandIo,
  plain: boolean | undefined,
  phrase: Phrase,
  /** For a clock on the screen. */
  clock?: () => Date,
): Promise<TerminalEnd> {
  const { stdin, stdout, env } = io;
  const mode = chooseTerminalMode({
    stdinIsTTY: stdin.isTTY === true,
    stdoutIsTTY: stdout.isTTY === true,
    env,
    flags: plain === undefined ? {} : { plain },
  });
  const interrupted = new AbortController();
  const stop = () => interrupted.abort();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop);
  if (mode === 'interactive') {
    const { runInTerminal } = await import('./walk-on-screen.ts');
    return runInTerminal({
      conversation,
      io,
      phrase,
      interrupted: interrupted.signal,
      ...(clock ? { clock } : {}),
    });
  }
  const { runPlain } = await import('../terminal/plain/run-plain.ts');
  return runPlain({
    conversation,
    input: stdin,
    output: stdout,
    phrase,
    columns: () => stdout.columns,
    echo: stdin.isTTY !== true,
    interrupted: interrupted.signal,
  });
}

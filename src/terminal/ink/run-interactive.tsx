import type { ReadStream, WriteStream } from 'node:tty';
import { render } from 'ink';
import { layOutBlocks } from '../lay-out-turn.ts';
import type { Phrase, TerminalConversation, TerminalEnd } from '../ports.ts';
import { stripToLine } from '../strip-control.ts';
import type { Symbols } from '../symbols.ts';
import { layoutWidth, wrapText } from '../wrap-text.ts';
import { createWriter, type Writer } from '../writer.ts';
import { WalkScreen } from './components/walk-screen.tsx';
import { createMinuteTicker } from './minute-ticker.ts';
import { createScreen, type Screen } from './screen.ts';
import { createSession, type Session, type SessionEnd } from './session.ts';
import { isRoomy, type Room } from './turn-rows.ts';

export interface InteractiveOptions {
  readonly conversation: TerminalConversation;
  readonly stdin: ReadStream;
  readonly stdout: WriteStream;
  readonly phrase: Phrase;
  readonly symbols: Symbols;
  /** False under NO_COLOR; nothing is told by colour alone. */
  readonly colour: boolean;
  /** See `terminalReflows`. */
  readonly reflows: boolean;
  /** Aborted by a signal from outside; Ctrl-C arrives as a key. */
  readonly interrupted?: AbortSignal;
  /** For a call: its clock is drawn with each key, and once a minute. */
  readonly clock?: () => Date;
}

/**
 * The conversation on the screen. Ends with the walk, Ctrl-C or Ctrl-D, a signal, or a closed window, and has
 * given the terminal back by then. Rejects when a turn could not be kept.
 */
export async function runInteractive(options: InteractiveOptions): Promise<TerminalEnd> {
  const { stdout } = options;
  const writer = createWriter(stdout);
  const screen = createScreen(stdout, options.reflows);
  try {
    const session = await createSession(options.conversation, () => roomOf(screen));
    const stopWatching = watchForLeaving(options, session);
    try {
      const ended = await draw(options, screen, session);
      await printEnd(options, writer, ended);
      return ended.end;
    } finally {
      stopWatching();
    }
  } finally {
    screen.release();
    writer.release();
  }
}

async function draw(options: InteractiveOptions, screen: Screen, session: Session): Promise<SessionEnd> {
  const { phrase, symbols, colour, clock } = options;
  const time = clock ? { clock, ticker: createMinuteTicker() } : {};
  const app = render(
    <WalkScreen
      session={session}
      screen={screen}
      phrase={phrase}
      symbols={symbols}
      colour={colour}
      {...time}
    />,
    // Frames are drawn when a key or a turn changes something, never by the clock: each at once.
    { stdin: options.stdin, stdout: screen.stream, exitOnCtrlC: false, patchConsole: false, maxFps: 1000 },
  );
  const unmount = (): void => app.unmount();
  session.ended.then(unmount, unmount);
  await app.waitUntilExit();
  // The library also leaves by itself, when the process is told to end.
  session.interrupt();
  return session.ended;
}

function watchForLeaving(options: InteractiveOptions, session: Session): () => void {
  const { stdin, stdout, interrupted } = options;
  const leave = session.interrupt;
  if (interrupted?.aborted) leave();
  interrupted?.addEventListener('abort', leave);
  for (const event of ['end', 'close', 'error']) stdin.on(event, leave);
  stdout.on('error', leave);
  return () => {
    interrupted?.removeEventListener('abort', leave);
    for (const event of ['end', 'close', 'error']) stdin.off(event, leave);
    stdout.off('error', leave);
  };
}

function roomOf(screen: Screen): Room {
  const { columns, rows } = screen.size();
  return { width: layoutWidth(columns), roomy: isRoomy(rows) };
}

/** The report and the last words are written as ordinary lines, after the screen was given back. */
async function printEnd(options: InteractiveOptions, writer: Writer, ended: SessionEnd): Promise<void> {
  const width = layoutWidth(options.stdout.columns);
  const texts = ended.lastTurn
    ? layOutBlocks(ended.lastTurn, width).map((row) => row.text)
    : wrapText(stripToLine(options.phrase('terminal.paused')), width);
  await writer.write(`${texts.join('\n')}\n`);
}

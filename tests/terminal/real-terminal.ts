import { type IPty, spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';

/** A program in a real pseudo-terminal, with a terminal emulator that shows what a person would see. */
export interface RealTerminal {
  readonly type: (keys: string) => void;
  readonly resize: (columns: number, rows: number) => Promise<void>;
  /** The rows of the screen, without the blanks at their ends. */
  readonly screen: () => readonly string[];
  /** Everything from the first row of the scrollback. */
  readonly everything: () => readonly string[];
  readonly bytes: () => string;
  readonly cursor: () => { readonly x: number; readonly y: number };
  /** Waits until the screen holds the text; fails with the screen after five seconds. */
  readonly until: (text: string) => Promise<void>;
  /** Waits until nothing more is written. */
  readonly settled: () => Promise<void>;
  readonly exited: Promise<{ readonly exitCode: number; readonly signal?: number | undefined }>;
  readonly kill: (signal?: string) => void;
}

/** Starts a Node program in a terminal of this size. */
export function openTerminal(
  file: string,
  columns: number,
  rows: number,
  env: Readonly<Record<string, string>> = {},
): RealTerminal {
  const base = { PATH: process.env.PATH ?? '', HOME: '/tmp', TERM: 'xterm-256color', LANG: 'C.UTF-8' };
  const pty = spawn(process.execPath, [file], {
    cols: columns,
    rows,
    env: { ...base, ...env },
    name: 'xterm-256color',
  });
  const emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true, scrollback: 5000 });
  let bytes = '';
  let lastWrite = Date.now();
  pty.onData((data) => {
    bytes += data;
    lastWrite = Date.now();
    emulator.write(data);
  });
  const everything = () => readBuffer(emulator, 0);
  const screen = () => readBuffer(emulator, emulator.buffer.active.baseY);
  const settled = async () => {
    do await pause(20);
    while (Date.now() - lastWrite < 150);
    await new Promise<void>((resolve) => emulator.write('', resolve));
  };
  return {
    type: (keys) => {
      lastWrite = Date.now();
      pty.write(keys);
    },
    resize: async (newColumns, newRows) => {
      emulator.resize(newColumns, newRows);
      pty.resize(newColumns, newRows);
      lastWrite = Date.now();
      await settled();
    },
    screen,
    everything,
    bytes: () => bytes,
    cursor: () => ({ x: emulator.buffer.active.cursorX, y: emulator.buffer.active.cursorY }),
    until: (text) =>
      waitFor(
        () => screen().join('\n').includes(text),
        () => `"${text}" in\n${screen().join('\n')}`,
      ),
    settled,
    exited: new Promise((resolve) => pty.onExit(resolve)),
    kill: (signal) => stop(pty, signal),
  };
}

function readBuffer(emulator: InstanceType<typeof headless.Terminal>, from: number): readonly string[] {
  const { active } = emulator.buffer;
  const rows = [];
  for (let row = from; row < active.length; row += 1)
    rows.push(active.getLine(row)?.translateToString(true) ?? '');
  return rows;
}

async function waitFor(holds: () => boolean, describe: () => string): Promise<void> {
  const end = Date.now() + 5_000;
  while (!holds()) {
    if (Date.now() > end) throw new Error(`waited in vain for ${describe()}`);
    await pause(10);
  }
}

function stop(pty: IPty, signal?: string): void {
  try {
    pty.kill(signal);
  } catch {
    // It has ended already.
  }
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

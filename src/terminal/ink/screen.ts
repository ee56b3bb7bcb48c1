import { EventEmitter } from 'node:events';
import type { WriteStream } from 'node:tty';

/** The last frame that was drawn: the columns of each row; the cursor stands in the last one. */
export type FrameWidths = readonly number[];

export interface ScreenSize {
  readonly columns: number;
  readonly rows: number;
}

/** The terminal as the drawing library is shown it, and its size. */
export interface Screen {
  /** Handed to the drawing library in place of the real stream. */
  readonly stream: WriteStream;
  readonly size: () => ScreenSize;
  readonly subscribe: (changed: () => void) => () => void;
  /** Told after each drawing, so that a narrower screen can be cleaned of what its rows have become. */
  readonly noteFrame: (widths: FrameWidths) => void;
  readonly release: () => void;
}

/**
 * Stands between the drawing library and the terminal for two reasons. A frame as high as the terminal makes the
 * library erase the scrollback, so it is told of rows without end (the frames are kept low elsewhere). And a
 * terminal that becomes narrower breaks drawn rows in two, of which the library would erase only half.
 * `reflows`: false for terminals that cut rows instead of breaking them.
 */
export function createScreen(real: WriteStream, reflows: boolean): Screen {
  const events = new EventEmitter();
  const listeners = new Set<() => void>();
  let size = sizeOf(real);
  let frame: FrameWidths = [];

  const onResize = (): void => {
    const before = size;
    size = sizeOf(real);
    if (reflows && size.columns < before.columns) real.write(eraseOverflow(frame, size.columns));
    events.emit('resize');
    for (const listener of listeners) listener();
  };
  real.on('resize', onResize);

  return {
    stream: facade(real, events, () => size.columns),
    size: () => size,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    noteFrame: (widths) => {
      frame = widths;
    },
    release: () => {
      real.off('resize', onResize);
    },
  };
}

function sizeOf(real: WriteStream): ScreenSize {
  return { columns: real.columns || 80, rows: real.rows || 24 };
}

/** Only what the drawing library uses of a stream. */
function facade(real: WriteStream, events: EventEmitter, columns: () => number): WriteStream {
  const stream = Object.assign(events, {
    isTTY: true,
    rows: Number.POSITIVE_INFINITY,
    write: real.write.bind(real),
  });
  Object.defineProperties(stream, {
    columns: { get: columns },
    writable: { get: () => real.writable },
    destroyed: { get: () => real.destroyed },
    writableEnded: { get: () => real.writableEnded },
    writableLength: { get: () => real.writableLength },
  });
  return stream as unknown as WriteStream;
}

/**
 * Erases as many rows as the frame has gained at this width, from below the frame upwards, and leaves the cursor
 * where the library, which goes one row down and erases the rows it knows of, ends at the top of the frame.
 */
export function eraseOverflow(frame: FrameWidths, columns: number): string {
  const gained = frame
    .slice(0, -1)
    .reduce((sum, width) => sum + Math.max(1, Math.ceil(width / columns)) - 1, 0);
  if (gained === 0) return '';
  // A line feed, since the terminal may have dropped the empty row below the cursor.
  return `\n\r${'\u001b[2K\u001b[1A'.repeat(gained)}\u001b[1A`;
}

/** Whether a terminal that becomes narrower breaks long rows in two, as nearly all do today. */
export function terminalReflows(env: Readonly<Record<string, string | undefined>>): boolean {
  return env.TERM !== 'linux' && env.XTERM_VERSION === undefined && !(env.TERM ?? '').startsWith('rxvt');
}

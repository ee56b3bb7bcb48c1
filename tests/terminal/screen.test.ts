import { EventEmitter } from 'node:events';
import type { WriteStream } from 'node:tty';
import { describe, expect, it } from 'vitest';
import { createScreen, eraseOverflow, terminalReflows } from '../../src/terminal/ink/screen.ts';

function fakeTerminal(columns: number) {
  const written: string[] = [];
  const stream = Object.assign(new EventEmitter(), {
    columns,
    rows: 24,
    isTTY: true,
    write: (text: string) => written.push(text) > 0,
  });
  return { stream, written, real: stream as unknown as WriteStream };
}

describe('what a narrower terminal makes of the live part', () => {
  it.each([
    [[20, 30, 10], 40, 0],
    [[80, 30, 10], 40, 1],
    [[79, 81, 0, 10], 40, 3],
    [[40, 40, 90], 40, 0],
  ])('rows of %j columns at %i gain %i rows, which are erased', (frame, columns, gained) => {
    expect(eraseOverflow(frame, columns).split('\u001b[2K').length - 1).toBe(gained);
  });

  it('is erased only when the terminal has become narrower, and only where it breaks rows', () => {
    for (const [reflows, to, writes] of [
      [true, 40, 1],
      [true, 120, 0],
      [false, 40, 0],
    ] as const) {
      const { stream, written, real } = fakeTerminal(100);
      const screen = createScreen(real, reflows);
      screen.noteFrame([80, 5]);
      stream.columns = to;
      stream.emit('resize');
      expect(written.length).toBe(writes);
      expect(screen.size().columns).toBe(to);
      screen.release();
      expect(stream.listenerCount('resize')).toBe(0);
    }
  });

  it.each([
    [{ TERM: 'xterm-256color' }, true],
    [{ TERM: 'linux' }, false],
    [{ TERM: 'rxvt-unicode' }, false],
    [{ TERM: 'xterm-256color', XTERM_VERSION: 'XTerm(390)' }, false],
  ])('with %j: rows are broken, %s', (env, expected) => {
    expect(terminalReflows(env)).toBe(expected);
  });
});

describe('the screen as the drawing library sees it', () => {
  it('has rows without end, so that no frame is ever as high as the terminal', () => {
    const { real } = fakeTerminal(100);
    expect(createScreen(real, true).stream.rows).toBe(Number.POSITIVE_INFINITY);
  });

  it('tells of a new size those who draw, after the size is known', () => {
    const { stream, real } = fakeTerminal(100);
    const screen = createScreen(real, true);
    const seen: number[] = [];
    screen.stream.on('resize', () => seen.push(screen.stream.columns));
    const stop = screen.subscribe(() => seen.push(screen.size().columns));
    stream.columns = 50;
    stream.emit('resize');
    stop();
    stream.columns = 60;
    stream.emit('resize');
    expect(seen).toEqual([50, 50, 60]);
  });
});

import { fileURLToPath } from 'node:url';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { buildProgram } from '../support/build-program.ts';
import { openTerminal, type RealTerminal } from './real-terminal.ts';

const esc = '\u001b';
let program: string;
beforeAll(async () => {
  program = await buildProgram(fileURLToPath(new URL('./programs/interactive-walk.ts', import.meta.url)));
});

let terminal: RealTerminal;
afterEach(() => terminal.kill('SIGKILL'));

async function open(
  columns: number,
  rows: number,
  env: Readonly<Record<string, string>> = {},
): Promise<void> {
  terminal = openTerminal(program, columns, rows, env);
  await terminal.until('Question 1:');
  await terminal.settled();
}

function countOf(text: string): number {
  return terminal.everything().filter((row) => row.includes(text)).length;
}

describe.each([
  [80, 24],
  [40, 24],
  [80, 10],
  [40, 10],
])('a walk of 50 long questions on a real terminal of %i by %i', (columns, rows) => {
  it('has each question on the screen when it is asked, once in the scrollback, and never erases that', async () => {
    await open(columns, rows);
    for (let number = 1; number <= 50; number += 1) {
      await terminal.until(`Question ${number}:`);
      terminal.type(number % 5 === 0 ? `${esc}[B${esc}[B\r` : `answer ${number}\r`);
      if (number % 3 === 0 && number % 5 === 0) terminal.type('typed, since there is nothing to choose\r');
    }
    expect((await terminal.exited).exitCode).toBe(0);
    await terminal.settled();
    for (let number = 1; number <= 50; number += 1) expect(countOf(`Question ${number}:`)).toBe(1);
    expect(countOf('answer 49')).toBeGreaterThan(0);
    expect(countOf('Do job 30')).toBe(1);
    expect(
      terminal
        .everything()
        .filter((row) => row !== '')
        .at(-1),
    ).toBe('end: finished');
    expect(terminal.bytes()).not.toContain(`${esc}[3J`);
    expect(terminal.bytes()).not.toContain(`${esc}[2J`);
  }, 40_000);
});

describe('a real terminal that changes its size', () => {
  it('from 100 to 40 and back to 100 columns has the question and the choices once', async () => {
    await open(100, 24);
    terminal.type(`${esc}[Bhalf`);
    await terminal.settled();
    for (const columns of [40, 100]) {
      await terminal.resize(columns, 24);
      expect(countOf('Question 1:')).toBe(1);
      expect(countOf('About (1 of 9)')).toBe(1);
      expect(countOf('1 (a) Composition')).toBe(1);
      expect(countOf('> half')).toBe(1);
      expect(countOf('A walk round one house')).toBe(1);
    }
    terminal.type('\r');
    await terminal.until('Noted: half');
    expect(countOf('Question 1:')).toBe(1);
    expect(terminal.bytes()).not.toContain(`${esc}[3J`);
  });

  it('never erases the scrollback when it becomes lower than the live part was', async () => {
    await open(80, 24);
    terminal.type('one\rtwo\r');
    await terminal.until('Question 3:');
    for (const rows of [10, 5, 24]) await terminal.resize(80, rows);
    terminal.type('three\r');
    await terminal.until('Question 4:');
    expect(terminal.bytes()).not.toContain(`${esc}[3J`);
    for (const number of [1, 2, 3, 4]) expect(countOf(`Question ${number}:`)).toBe(1);
    expect(countOf('A walk round one house')).toBe(1);
  });

  it('keeps every question once through many changes in a row', async () => {
    await open(100, 24);
    terminal.type('one\r');
    await terminal.until('Question 2:');
    for (const columns of [90, 75, 60, 45, 30, 50, 120, 40, 100]) await terminal.resize(columns, 24);
    terminal.type('two\r');
    await terminal.until('Question 3:');
    for (const number of [1, 2, 3]) expect(countOf(`Question ${number}:`)).toBe(1);
    expect(countOf('Noted: one')).toBe(1);
  });
});

describe('leaving a real terminal', () => {
  it('by Ctrl-C says that answers are kept and gives the terminal back', async () => {
    await open(80, 24);
    terminal.type('one\r');
    await terminal.until('Question 2:');
    terminal.type('half\u0003');
    expect((await terminal.exited).exitCode).toBe(0);
    await terminal.settled();
    const rows = terminal.everything().filter((row) => row !== '');
    expect(rows.slice(-3).join(' ')).toMatch(/Your answers are kept\..*end: paused$/u);
    expect(countOf('half')).toBe(0);
    expect(countOf('Question 2:')).toBe(1);
    expect(terminal.bytes().lastIndexOf(`${esc}[?25h`)).toBeGreaterThan(
      terminal.bytes().lastIndexOf(`${esc}[?25l`),
    );
  });

  it('by a fault that kept no answer ends with the error and exit code 1', async () => {
    await open(80, 24);
    terminal.type('break\r');
    expect((await terminal.exited).exitCode).toBe(1);
    await terminal.settled();
    expect(terminal.everything()).toContain('error: the disk is full');
  });
});

describe('typing on a real terminal', () => {
  it('submits a pasted "yes" with its Enter, and erases an emoji whole', async () => {
    await open(80, 24);
    terminal.type('yes\r');
    await terminal.until('Noted: yes');
    terminal.type('ab👍🏽');
    await terminal.until('> ab👍');
    terminal.type('\u007f');
    await terminal.settled();
    terminal.type('c\r');
    await terminal.until('Noted: abc');
  });

  it('has the terminal cursor behind what was typed, for input methods', async () => {
    await open(80, 24);
    terminal.type('tile');
    await terminal.settled();
    const { x, y } = terminal.cursor();
    expect(x).toBe('> tile'.length);
    expect(terminal.screen()[y]).toBe('> tile');
  });
});

describe('looks on a real terminal', () => {
  const colours = new RegExp(`${esc}\\[(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;[\\d;]*)?m`, 'u');

  it('have no colour under NO_COLOR, and show the pointer and the place all the same', async () => {
    await open(80, 24, { NO_COLOR: '1' });
    terminal.type(`stop here?\r${esc}[B`);
    await terminal.until('❯ [ ] 1 (a)');
    expect(terminal.bytes()).not.toMatch(colours);
    expect(terminal.screen().join('\n')).toContain('███');
  });

  it('never use green, yellow or red, of which people would make a scale', async () => {
    await open(80, 24);
    terminal.type(`${esc}[B`);
    await terminal.until('❯');
    expect(terminal.bytes()).toMatch(colours);
    expect(terminal.bytes()).not.toMatch(new RegExp(`${esc}\\[(?:3[123]|9[123]|4[123])m`, 'u'));
  });

  it('are plain ASCII where the locale is', async () => {
    await open(80, 24, { LANG: 'C' });
    terminal.type(`${esc}[B`);
    await terminal.until('> 1 (a)');
    expect(terminal.screen().join('\n')).toMatch(/^[\n -~]+$/u);
  });

  it('are drawn even with an empty CI in the environment', async () => {
    await open(80, 24, { CI: '' });
    await terminal.until('Type it, or arrow keys and Enter.');
  });
});

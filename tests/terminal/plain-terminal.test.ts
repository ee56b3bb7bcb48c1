import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildProgram } from '../support/build-program.ts';
import { openTerminal } from './real-terminal.ts';

const source = fileURLToPath(new URL('../../src/terminal', import.meta.url));
let program: string;
beforeAll(async () => {
  program = await buildProgram(fileURLToPath(new URL('./programs/plain-walk.ts', import.meta.url)));
});

/** Every module that a bundle of this file takes in, packages too. */
async function modulesOf(entry: string): Promise<readonly string[]> {
  const { metafile } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    format: 'esm',
    outdir: '/unused',
    logLevel: 'error',
  });
  return Object.keys(metafile.inputs);
}

describe('the modules of the plain terminal', () => {
  it('hold no package at all, so neither ink nor react', async () => {
    const modules = await modulesOf(join(source, 'plain', 'run-plain.ts'));
    expect(modules).toContain('src/terminal/plain/run-plain.ts');
    expect(modules.filter((path) => path.includes('node_modules') || path.includes('/ink/'))).toEqual([]);
  });

  it('are apart from the interactive ones: only one file loads those, and only when it is called', () => {
    const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((path) =>
      /\.tsx?$/u.test(path),
    );
    const outside = files.filter((path) => !path.startsWith('ink'));
    const loading = outside.filter((path) => {
      const text = readFileSync(join(source, path), 'utf8').replaceAll(/^import type .*$/gmu, '');
      return /['"](?:ink|react|.*\/ink\/.*)['"]/u.test(text);
    });
    expect(loading).toEqual(['load-interactive.ts']);
    expect(readFileSync(join(source, 'load-interactive.ts'), 'utf8')).toContain("await import('./ink/");
  });
});

describe('the plain terminal as a program', () => {
  it('writes no escape character on a real terminal, and stays in its columns', async () => {
    const terminal = openTerminal(program, 40, 24);
    for (let number = 1; number <= 50; number += 1) {
      await terminal.until(`Question ${number}:`);
      terminal.type(`answer ${number}\r`);
    }
    expect((await terminal.exited).exitCode).toBe(0);
    await terminal.settled();
    expect(terminal.bytes()).not.toContain('\u001b');
    expect(terminal.everything().filter((row) => row.includes('Question 50:'))).toHaveLength(1);
    expect(terminal.everything()).toContain('> answer 7');
    for (const row of terminal.bytes().split('\r\n')) expect(row.length).toBeLessThan(40);
  }, 30_000);

  it('pauses on Ctrl-C with a word that answers are kept', async () => {
    const terminal = openTerminal(program, 80, 24);
    await terminal.until('Question 1:');
    terminal.type('one\r');
    await terminal.until('Question 2:');
    await terminal.settled();
    terminal.type('\u0003');
    expect((await terminal.exited).exitCode).toBe(0);
    await terminal.settled();
    expect(terminal.everything().join(' ')).toMatch(/Your answers are kept.*end: paused/u);
  });

  it('answers lines from a pipe in turn, and shows each after its prompt', async () => {
    const child = spawn(process.execPath, [program], { stdio: ['pipe', 'pipe', 'inherit'] });
    let text = '';
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
    });
    child.stdin.end('brown tile\n2\n');
    expect(await once(child, 'close')).toEqual([0, null]);
    expect(text).toMatch(
      /Question 1:[^>]*> brown tile\n\nNoted: brown tile\n\nQuestion 2:[^>]*> 2\n\nNoted: 2\n/u,
    );
    expect(text).toMatch(/answers are kept[^>]*end: paused\n$/u);
  });
});

import { existsSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type * as z from 'zod';
import { Report } from '../../src/report/report.ts';
import { runCommand } from '../support/run-command.ts';

const house = 'tests/houses/fernhollow-lane-12.yaml';

function answerFile(text: string): string {
  const path = join(mkdtempSync(join(tmpdir(), 'roofdown-answers-')), 'house.yaml');
  writeFileSync(path, text);
  return path;
}

describe('walk --answers', () => {
  it('prints a report to standard output, ends with 0 and touches no store', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'roofdown-'));
    const run = await runCommand(['walk', '--answers', house], [], folder);
    expect(run.code).toBe(0);
    expect(run.out).toContain('12 Fernhollow Lane');
    expect(run.err).toBe('');
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each(['text', 'markdown', 'html', 'json'])('makes the report as %s', async (format) => {
    const run = await runCommand(['walk', '--answers', house, '--format', format]);
    expect(run.code).toBe(0);
    expect(run.out.endsWith('\n')).toBe(true);
    if (format === 'json') expect(Report.safeParse(JSON.parse(run.out)).success).toBe(true);
  });

  it('names a misspelt question and option with file, line, column and what was meant, and makes nothing', async () => {
    const path = answerFile('roof.covring: tile\nroof.condition: sund\n');
    const run = await runCommand(['walk', '--answers', path]);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toContain(`${path}:1:1`);
    expect(run.err).toContain('Did you mean "roof.covering"?');
    expect(run.err).toContain(`${path}:2:`);
    expect(run.err).toContain('"sound"');
  });

  it('says where a file is not YAML', async () => {
    const path = answerFile('roof.covering: [tile\n');
    const run = await runCommand(['walk', '--answers', path]);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/house\.yaml:\d+:\d+/);
  });

  it('says that a file is not there', async () => {
    const run = await runCommand(['walk', '--answers', '/nowhere/house.yaml']);
    expect(run.code).toBe(2);
    expect(run.err).toContain('/nowhere/house.yaml');
    expect(run.err).not.toContain('    at ');
  });

  it('warns of answers that are not asked for, and of units that it assumed', async () => {
    const path = answerFile(
      'about.place: tamber-county\nroof.covering: shingle\nroof.open-ends: open\nzone1.tank: large\nzone1.tank-distance: 12\n',
    );
    const run = await runCommand(['walk', '--answers', path]);
    expect(run.code).toBe(0);
    expect(run.err).toContain('"roof.open-ends" is not asked for this house');
    expect(run.err).toMatch(/:5:1 .*taken in ft/);
  });

  it('counts what is missing as not sure, so that it is to find out', async () => {
    const run = await runCommand([
      'walk',
      '--answers',
      answerFile('about.place: tamber-county\n'),
      '--format',
      'json',
    ]);
    const report = JSON.parse(run.out) as z.infer<typeof Report>;
    expect(report.walk.open).toBe(0);
    expect(report.toFindOut.length).toBeGreaterThan(10);
    expect(report.inOrder).toBe(false);
  });

  it('prints only the order to leave when the answers speak of danger, and ends with 3', async () => {
    const run = await runCommand([
      'walk',
      '--answers',
      answerFile('about.danger: yes\nabout.place: tamber-county\n'),
    ]);
    expect(run.code).toBe(3);
    expect(run.out).toContain('LEAVE NOW');
    expect(run.out).toContain('911');
    expect(run.out.trim().split('\n').length).toBeLessThanOrEqual(2);
  });

  it('names every configured number while the place is not known', async () => {
    const run = await runCommand(['walk', '--answers', answerFile('about.danger: yes\n')]);
    for (const number of ['911', '000', '111']) expect(run.out).toContain(number);
  });

  it('refuses an unknown format', async () => {
    const run = await runCommand(['walk', '--answers', house, '--format', 'pdf']);
    expect(run.code).toBe(2);
    expect(run.err).toContain('text, markdown, html, json');
  });
});

describe('command lines', () => {
  it.each([
    [['fly']],
    [['walk', '--fly']],
    [['walk', '--units', 'cubits']],
    [['schema', 'house']],
    [['walks', 'show', 'zz']],
  ])('ends %j with 2 and a line that tells what to do, never a stack', async (argv) => {
    const run = await runCommand(argv);
    expect(run.code).toBe(2);
    expect(run.err.length).toBeGreaterThan(20);
    expect(run.err).not.toMatch(/^\s+at /m);
  });

  it.each(['walk', 'walks', 'sheet', 'questions', 'check-flows', 'picture', 'schema'])(
    '%s has a help with an example or its own commands',
    async (command) => {
      const run = await runCommand([command, '--help']);
      expect(run.code).toBe(0);
      expect(run.out).toMatch(/Example|Commands:/);
    },
  );

  it('tells its version', async () => {
    const { version } = JSON.parse((await import('node:fs')).readFileSync('package.json', 'utf8')) as {
      version: string;
    };
    expect((await runCommand(['--version'])).out.trim()).toBe(version);
    expect(existsSync('package.json')).toBe(true);
  });
});

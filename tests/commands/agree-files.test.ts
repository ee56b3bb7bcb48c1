import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../support/run-command.ts';

const sound = 'tests/houses/fernhollow-lane-12.yaml';
const folder = mkdtempSync(join(tmpdir(), 'agree-'));

/** The answer file with a word changed. */
function changed(name: string, from: string, to: string): string {
  const path = join(folder, name);
  const text = readFileSync(sound, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
  return path;
}

describe('answer files with mistakes in them', () => {
  it('are both told at once, each fault with its place and what was meant', async () => {
    const one = changed('one.yaml', 'about.building', 'about.bulding');
    const other = changed('other.yaml', 'roof.covering: shingle', 'roof.covering: shingel');
    const { code, err } = await runCommand(['agree', one, other]);
    expect(code).toBe(2);
    expect(err).toMatch(/one\.yaml:\d+:\d+ .*Did you mean "about\.building"\?/);
    expect(err).toMatch(/other\.yaml:\d+:\d+ .*Did you mean "shingle"\?/);
    expect(err).toContain('Mend the answer files and try again.');
  });

  it('are told what of them is not used, and compared all the same', async () => {
    const other = changed('unused.yaml', 'about.lines:', 'about.deck-sides: { left: yes }\nabout.lines:');
    const { code, out, err } = await runCommand(['agree', sound, other]);
    expect(code).toBe(0);
    expect(err).toMatch(/unused\.yaml:\d+:\d+ about\.deck-sides: .*is not used/);
    expect(out).toContain('Where the two walks differ');
  });

  it.each([
    ['is not there', join(folder, 'nowhere.yaml'), /There is no file/],
    ['is a folder', folder, /cannot be read/],
  ])('are named when one %s', async (_, path, said) => {
    const { code, err } = await runCommand(['agree', sound, path]);
    expect(code).toBe(2);
    expect(err).toMatch(said);
  });

  it('are refused when one has no answers', async () => {
    const empty = join(folder, 'empty.yaml');
    writeFileSync(empty, '');
    const { code, err } = await runCommand(['agree', sound, empty]);
    expect(code).toBe(2);
    expect(err).toContain('has no answers');
  });
});

describe('sides on which two walks differ in the same way', () => {
  it('are told in one line', async () => {
    const { out } = await runCommand(['agree', sound, 'tests/practice/fernhollow-lane-12-second.yaml']);
    expect(out).toContain('- Side of the garage door, left, back, and right: no / no answer');
  });
});

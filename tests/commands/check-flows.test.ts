import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../support/run-command.ts';

/** A copy of the flow files with a word of one file changed. */
function copyWith(file: string, from: string, to: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'flows-'));
  cpSync('flows', folder, { recursive: true });
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
  return folder;
}

describe('check-flows', () => {
  it('finds flow and practice files sound, and says how much it read', async () => {
    const { code, out } = await runCommand(['check-flows']);
    expect(code).toBe(0);
    expect(out).toMatch(/The flow files are sound: \d+ questions/);
    expect(out).toMatch(/The practice files are sound: \d+ fact cards, \d+ phrases/);
  });

  it('tells a fault of a practice file with file, line, column and what was meant', async () => {
    const folder = copyWith('practice/house.yaml', 'about.danger: "no"', 'about.dangr: "no"');
    const { code, err } = await runCommand(['check-flows', folder]);
    expect(code).toBe(2);
    expect(err).toMatch(
      /practice\/house\.yaml:\d+:\d+ house\.fixed\.about\.dangr: .* Did you mean "about\.danger"\?/,
    );
    expect(err).toContain('One fault in the flow files.');
  });

  it('tells the shape of a practice file even where the flow has faults of its own', async () => {
    const folder = copyWith('practice/cards.yaml', 'limit: meshMax', 'limits: meshMax');
    const stop = join(folder, 'home/stops/eaves.yaml');
    writeFileSync(stop, readFileSync(stop, 'utf8').replace('kind: choice', 'kind: choise'));
    const { code, err } = await runCommand(['check-flows', folder]);
    expect(code).toBe(2);
    expect(err).toContain('Did you mean "choice"?');
    expect(err).toMatch(/cards\.yaml:\d+:\d+ .*Did you mean "limit"\?/);
  });
});

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

function filesBelow(folder: string): string[] {
  return readdirSync(resolve(folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => /\.tsx?$/.test(path) && statSync(path).isFile());
}

const lines = (path: string) => readFileSync(path, 'utf8').trimEnd().split('\n');

interface Counted {
  readonly path: string;
  readonly name: string;
  readonly length: number;
}

/**
 * Lengths of top-level functions, by the formatter's own layout: one starts at a `function` or at an arrow that
 * opens a block in the first column, and ends at the first line that closes it there.
 */
function topLevelFunctions(path: string): Counted[] {
  const found: Counted[] = [];
  const text = lines(path);
  text.forEach((line, start) => {
    const name =
      /^(?:export )?(?:default )?(?:async )?function\*? (\w+)/.exec(line)?.[1] ??
      /^(?:export )?const (\w+) = (?:async )?(?:<.*>)?\(.*=> \{$/.exec(line)?.[1];
    if (name === undefined) return;
    const length =
      text
        .slice(start)
        .findIndex((later) => /^\}/.test(later) && !/^\}\)?[:(,]/.test(later) && !/^\}.*\{$/.test(later)) + 1;
    found.push({ path, name, length });
  });
  return found;
}

const say = ({ path, name, length }: Counted) => `${path} ${name}: ${length} lines`;

describe('the size of files and functions', () => {
  const source = filesBelow('src');

  it('keeps every source file under 300 lines, and nearly all under 200', () => {
    const long = source
      .map((path) => ({ path, length: lines(path).length }))
      .filter(({ length }) => length > 200);
    expect(long.filter(({ length }) => length > 300)).toEqual([]);
    expect(long.length / source.length).toBeLessThan(0.03);
  });

  it('keeps every function under 60 lines, a component under 120, and nearly all under 40', () => {
    const counted = source.flatMap(topLevelFunctions);
    const limit = ({ path }: Counted) => (path.endsWith('.tsx') ? 120 : 60);
    expect(counted.filter((one) => one.length > limit(one)).map(say)).toEqual([]);
    const long = counted.filter((one) => one.length > 40 && !one.path.endsWith('.tsx'));
    expect(long.length / counted.length, long.map(say).join('\n')).toBeLessThan(0.03);
  });

  it('keeps every test file under 400 lines', () => {
    const long = filesBelow('tests').filter((path) => !path.includes('fixtures') && lines(path).length > 400);
    expect(long).toEqual([]);
  });
});

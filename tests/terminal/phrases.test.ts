import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { displayWidth } from '../../src/terminal/display-width.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const file = readFileSync(join(root, 'flows/home/phrases-terminal.yaml'), 'utf8');
const { phrases } = parse(file) as { phrases: Readonly<Record<string, string>> };

describe('the phrases of the terminal', () => {
  it('are all there and all used', () => {
    const folder = join(root, 'src/terminal');
    const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.tsx?$/u.test(path))
      .map((path) => readFileSync(join(folder, path), 'utf8'))
      .join('\n');
    const used = new Set(Array.from(sources.matchAll(/'(terminal\.[a-z.-]+)'/gu), (match) => match[1]));
    expect([...used].sort()).toEqual(Object.keys(phrases).sort());
  });

  it('about the keys fit on a screen of 40 columns without being cut', () => {
    const keys = Object.entries(phrases).filter(([id]) => id.startsWith('terminal.keys.'));
    expect(keys).toHaveLength(3);
    for (const [id, text] of keys) expect(displayWidth(text), id).toBeLessThan(40);
  });
});

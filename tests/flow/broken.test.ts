import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readYaml } from '../../src/files/read-yaml.ts';
import { buildFlow } from '../../src/flow/build-flow.ts';
import { sayProblem } from '../../src/flow/problem.ts';

const folder = resolve('tests/flow');
const textsIn = (name: string): Map<string, string> =>
  new Map(
    readdirSync(join(folder, name)).map((file) => [
      basename(file, '.yaml'),
      readFileSync(join(folder, name, file), 'utf8'),
    ]),
  );

/** A small complete flow, with the real words of the language. */
const sound = textsIn('sound').set('words', readFileSync(resolve('flows/words/en.yaml'), 'utf8'));
const broken = textsIn('broken');

function problemsOf(files: ReadonlyMap<string, string>): string[] {
  const read = [...files].map(([name, text]) => readYaml(`${name}.yaml`, text));
  const unreadable = read.flatMap((one) => one.problems);
  if (unreadable.length > 0) return unreadable.map(sayProblem);
  const documents = read.map((one) => one.document);
  return buildFlow(documents, { computations: [], fingerprint: () => '' }).problems.map(sayProblem);
}

/** The file of the small flow that a broken one stands in for, and what is to be said about it. */
function claimOf(text: string) {
  return {
    insteadOf: /^# instead of: (\S+)$/m.exec(text)?.[1] ?? '',
    expected: [...text.matchAll(/^# expected: (.+)$/gm)].map((match) => match[1]),
  };
}

describe('a flow with one fault', () => {
  it('stands beside the same flow without it, which is sound', () => {
    expect(problemsOf(sound)).toEqual([]);
  });

  it('comes in many kinds', () => {
    expect(broken.size).toBeGreaterThan(90);
  });

  it.each([...broken])('is told where it is and what was meant: %s', (name, text) => {
    const { insteadOf, expected } = claimOf(text);
    const files = new Map(sound);
    expect(files.delete(insteadOf)).toBe(true);
    const problems = problemsOf(files.set(name, text));
    expect(expected.length).toBeGreaterThan(0);
    expect(problems).toEqual(expected);
  });

  it('has no fault that is met with silence when a whole file is missing', () => {
    for (const name of ['walk', 'about', 'roof', 'rules', 'rulebook-general', 'words']) {
      const files = new Map(sound);
      files.delete(name);
      expect(problemsOf(files), name).not.toEqual([]);
    }
  });
});

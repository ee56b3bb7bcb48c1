import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Folders in which every text is for a person who runs a command, edits a flow file or reads a fault: errors and help. */
const errorsAndHelp = ['commands', 'files', 'settings.ts', 'main.ts', 'storage', 'flow', 'webhook'];

/** Sentences that may stand in code, with the reason. */
const allowed: readonly [file: RegExp, reason: string][] = [
  [/^answers\/(?:read-file|say-file-problem)/, 'faults of answer files'],
  [/^quantities\//, 'faults of measures in files, and words that people type'],
  [/^answers\/reading\//, 'words that people type, never said'],
  [/^practice\/reading\//, 'words that people type, never said'],
  [/^computations\//, 'notes, ranges and faults of the computations command'],
  [/^practice\/checks\//, 'faults of practice files'],
  [/^practice\/export-csv/, 'headings of the columns of a table'],
];

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.tsx?$/.test(name) && statSync(join(folder, name)).isFile(),
  );
}

/** Strings and templates of a source text, without comments, and without what a thrown fault says. */
function stringsIn(source: string): string[] {
  const code = source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/new \w*Error\([\s\S]*?\);/g, '')
    // Descriptions in a published schema are help.
    .replace(/\.(?:describe|meta)\([\s\S]*?\)/g, '');
  return [...code.matchAll(/'((?:[^'\\\n]|\\.)*)'|"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`/g)].map(
    ([, single, double, template]) => single ?? double ?? template ?? '',
  );
}

/** Four words or more in a row, of which one is a small word of English: a sentence, or much of one. */
const sentence = /(?:[A-Za-z']+[ ,]+){3,}[A-Za-z']+/;
const small = /\b(?:the|you|your|is|are|to|of|and|it|this|that|we|was|not|please)\b/;

describe('the source', () => {
  it('holds no sentence that a person on a walk would read: those live in the flow files', () => {
    const found = filesBelow('src')
      .filter((file) => !errorsAndHelp.some((part) => file === part || file.startsWith(`${part}/`)))
      .filter((file) => !allowed.some(([pattern]) => pattern.test(file)))
      .flatMap((file) =>
        stringsIn(readFileSync(join('src', file), 'utf8'))
          .filter((text) => sentence.test(text) && small.test(text))
          .map((text) => `${file}: ${text.slice(0, 90)}`),
      );
    expect(found).toEqual([]);
  });
});

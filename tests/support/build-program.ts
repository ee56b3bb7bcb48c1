import { createHash } from 'node:crypto';
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const folder = fileURLToPath(new URL('../../.build/tests', import.meta.url));

/** Bundles a TypeScript program of the tests, so that a child process can run it; returns the path of the file. */
export async function buildProgram(entry: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [entry],
    write: false,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    jsx: 'automatic',
    logLevel: 'error',
    outdir: folder,
    splitting: false,
  });
  const text = outputFiles[0]?.text ?? '';
  const file = join(folder, `${createHash('sha256').update(text).digest('hex').slice(0, 16)}.mjs`);
  mkdirSync(folder, { recursive: true });
  // Another worker may build the same program: it appears whole or not at all.
  writeFileSync(`${file}.${process.pid}`, text);
  renameSync(`${file}.${process.pid}`, file);
  return file;
}

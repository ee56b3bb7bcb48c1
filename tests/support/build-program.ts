import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
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
    entryNames: '[name]-[hash]',
    chunkNames: '[name]-[hash]',
    outExtension: { '.js': '.mjs' },
    // Without it, packages of a module that is loaded later would be loaded at the start.
    splitting: true,
  });
  mkdirSync(folder, { recursive: true });
  for (const { path, text } of outputFiles) {
    // Another worker may build the same program: it appears whole or not at all.
    writeFileSync(`${path}.${process.pid}`, text);
    renameSync(`${path}.${process.pid}`, path);
  }
  const [program] = outputFiles;
  if (!program) throw new Error(`nothing was built from ${entry}`);
  return program.path;
}

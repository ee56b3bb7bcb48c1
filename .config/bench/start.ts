// Time from the start of a process to its first question on screen, against the barest programs of the same kind.
// Build first (npm run build), then run it with: npm run bench start
import { spawn as spawnPiped } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { spawn as spawnInTerminal } from '@lydell/node-pty';
import { build } from 'esbuild';
import { inTurns, sayRatio } from './measure.ts';

const folder = mkdtempSync(join(tmpdir(), 'roofdown-start-'));
const built = resolve('.build/roofdown.mjs');
const ourQuestion = 'order to leave at your place right now?';
const bareQuestion = 'Is the bare question on screen?';

/** Bundles a bare program with the settings of the project's own build. */
async function bundle(name: string): Promise<string> {
  const outdir = resolve('.bench', 'programs', name);
  await build({
    entryPoints: [resolve('.config/bench/programs', `${name}.mjs`)],
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.19',
    minifySyntax: true,
    minifyWhitespace: true,
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    external: ['react-devtools-core'],
    banner: { js: "import{createRequire as requireFrom}from'node:module';const require=requireFrom(import.meta.url);" },
    logLevel: 'warning',
  });
  return join(outdir, `${name}.mjs`);
}

/** One folder of data for all runs: the first, which only warm up, make the store in it. */
const environment = () => ({
  PATH: process.env['PATH'] ?? '',
  HOME: folder,
  XDG_DATA_HOME: folder,
  TERM: 'xterm-256color',
  LANG: 'C.UTF-8',
});

/** Words in a stream of bytes, whatever lies between them: a terminal wraps and colours as it likes. */
const holds = (bytes: string, question: string) =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences are what is taken out
  bytes.replaceAll(/\u001b\[[0-9;?]*[A-Za-z]|\s/g, '').includes(question.replaceAll(/\s/g, ''));

const neverAsked = (bytes: string) => new Error(`The program ended without asking: ${bytes.slice(0, 400)}`);

/** Milliseconds until the question stands in a terminal of 80 x 24. */
function inTerminal(args: readonly string[], question: string): Promise<number> {
  return new Promise((done, fail) => {
    const started = performance.now();
    const settings = { cols: 80, rows: 24, env: environment(), name: 'xterm-256color' };
    const terminal = spawnInTerminal(process.execPath, [...args], settings);
    let bytes = '';
    let milliseconds = 0;
    terminal.onData((data) => {
      bytes += data;
      if (milliseconds > 0 || !holds(bytes, question)) return;
      milliseconds = performance.now() - started;
      terminal.kill('SIGKILL');
    });
    terminal.onExit(() => (milliseconds > 0 ? done(milliseconds) : fail(neverAsked(bytes))));
  });
}

/** Milliseconds until the question was written to a pipe. */
function inPipe(args: readonly string[], question: string): Promise<number> {
  return new Promise((done, fail) => {
    const started = performance.now();
    const child = spawnPiped(process.execPath, args, { env: environment(), stdio: ['pipe', 'pipe', 'inherit'] });
    let bytes = '';
    let milliseconds = 0;
    child.stdout.setEncoding('utf8').on('data', (data: string) => {
      bytes += data;
      if (milliseconds > 0 || !holds(bytes, question)) return;
      milliseconds = performance.now() - started;
      child.kill('SIGKILL');
    });
    child.on('exit', () => (milliseconds > 0 ? done(milliseconds) : fail(neverAsked(bytes))));
  });
}

const bareInk = await bundle('bare-ink');
const bareReadline = await bundle('bare-readline');
const times = await inTurns(
  {
    ours: () => inTerminal([built, 'walk', '--new'], ourQuestion),
    ink: () => inTerminal([bareInk], bareQuestion),
    plain: () => inPipe([built, 'walk', '--plain', '--new'], ourQuestion),
    readline: () => inPipe([bareReadline], bareQuestion),
    node: () => inPipe(['-e', 'console.log("nothing")'], 'nothing'),
  },
  { warm: 2, rounds: 21 },
);
const ms = (milliseconds: number) => `${milliseconds.toFixed(0)} ms`;
console.log(`First question: interactive ${ms(times.ours)}, bare ink ${ms(times.ink)}; plain ${ms(times.plain)}, bare readline ${ms(times.readline)}; Node alone ${ms(times.node)}`);
sayRatio('interactive over a bundled bare ink program', times.ours / times.ink, 'at most 1.6', times.ours <= 1.6 * times.ink);
sayRatio('plain over a bare readline prompt', times.plain / times.readline, 'at most 3', times.plain <= 3 * times.readline);
rmSync(folder, { recursive: true, force: true });

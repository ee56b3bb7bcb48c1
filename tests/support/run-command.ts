import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { runProgram } from '../../src/commands/program.ts';

/** What a command wrote and how it ended. */
export interface CommandRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

class Collector extends Writable {
  text = '';
  override _write(chunk: Buffer, _: BufferEncoding, done: () => void): void {
    this.text += chunk.toString('utf8');
    done();
  }
}

/** The day on which every test and transcript happens. */
export const testDay = new Date('2026-06-12T16:00:00Z');

/** Runs a command line in this process, with lines on its standard input and a data folder of its own. */
export async function runCommand(
  argv: readonly string[],
  lines: readonly string[] = [],
  dataFolder?: string,
  newId?: () => string,
  /** Settings of the environment besides. */
  env: Readonly<Record<string, string>> = {},
  clock: () => Date = () => testDay,
): Promise<CommandRun> {
  const folder = dataFolder ?? mkdtempSync(join(tmpdir(), 'roofdown-'));
  const out = new Collector();
  const err = new Collector();
  const code = await runProgram(argv, {
    stdin: Readable.from(lines.map((line) => `${line}\n`)) as never,
    stdout: out,
    stderr: err,
    env: { XDG_DATA_HOME: folder, CI: '1', ...env },
    home: folder,
    clock,
    ...(newId ? { newId } : {}),
  });
  if (dataFolder === undefined) rmSync(folder, { recursive: true, force: true });
  return { code, out: out.text, err: err.text };
}

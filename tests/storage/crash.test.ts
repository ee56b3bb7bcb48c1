import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { WalkId } from '../../src/conversation/record.ts';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { buildProgram } from '../support/build-program.ts';

const programs = fileURLToPath(new URL('./programs', import.meta.url));
let commitUntilKilled: string;
let openAndAdd: string;
beforeAll(async () => {
  commitUntilKilled = await buildProgram(join(programs, 'commit-until-killed.ts'));
  openAndAdd = await buildProgram(join(programs, 'open-and-add.ts'));
});

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-crash-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Lets the program acknowledge some turns, kills it without warning, and returns the last one said for each walk. */
async function runAndKill(file: string, turns: number): Promise<ReadonlyMap<string, number>> {
  const child = spawn(process.execPath, [commitUntilKilled, file], { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    said += chunk;
    if (said.split('\n').length > turns) child.kill('SIGKILL');
  });
  const [, signal] = await once(child, 'close');
  expect(signal).toBe('SIGKILL');
  const complete = said.slice(0, said.lastIndexOf('\n')).split('\n');
  return new Map(complete.map((line) => [line.split(' ')[0] ?? '', Number(line.split(' ')[1])]));
}

describe('a program killed without warning', () => {
  it('has on the disk everything that it acknowledged, and goes on from there', async () => {
    const file = join(folder, 'walks.sqlite');
    for (const turns of [10, 37, 120]) {
      const acknowledged = await runAndKill(file, turns);
      const store = createSqliteStore({ file });
      for (const [id, revision] of acknowledged) {
        const kept = await store.load(id as WalkId);
        expect(kept?.revision).toBeGreaterThanOrEqual(revision);
        expect(await store.replyTo('test', `${id}-${revision}`)).toMatchObject({ revision });
        expect(kept?.sheet[`q${(kept?.revision ?? 0) % 40}`]).toEqual({
          status: 'given',
          value: kept?.revision,
        });
      }
      expect(acknowledged.size).toBe(3);
      await store.close();
    }
  }, 30_000);
});

describe('programs that start at the same moment', () => {
  it('make the tables once and all keep their walk', async () => {
    const file = join(folder, 'walks.sqlite');
    const ids = ['w1', 'w2', 'w3', 'w4', 'w5', 'w6'];
    const run = promisify(execFile);
    const outcomes = await Promise.all(ids.map((id) => run(process.execPath, [openAndAdd, file, id])));
    expect(outcomes.map((outcome) => outcome.stdout)).toEqual(ids.map(() => 'saved'));
    const store = createSqliteStore({ file });
    expect((await store.list()).map((line) => line.id)).toEqual(ids);
    await store.close();
  }, 30_000);
});

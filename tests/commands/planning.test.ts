import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newWalk } from '../../src/conversation/new-walk.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import { prepareDataFolder } from '../../src/storage/data-folder.ts';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { sheetOf } from '../planning/houses.ts';
import { realProgramme } from '../support/programme.ts';
import { runCommand } from '../support/run-command.ts';

const id = 'abcd1234-0000-4000-8000-000000000000' as WalkId;
const fernhollow = 'tests/houses/fernhollow-lane-12.yaml';

function storeIn(data: string) {
  const folder = prepareDataFolder({ env: { XDG_DATA_HOME: data }, home: data });
  if (folder.kind !== 'ready') throw new Error(folder.message);
  return createSqliteStore({ file: folder.databaseFile, labelOf: () => undefined });
}

/** A data folder that keeps one finished walk. */
async function withWalk(): Promise<string> {
  const data = mkdtempSync(join(tmpdir(), 'roofdown-'));
  const store = storeIn(data);
  const walk = newWalk(realProgramme(), id, new Date('2026-05-01T10:00:00Z'));
  const record: WalkRecord = {
    ...walk,
    sheet: sheetOf('houses/fernhollow-lane-12'),
    cursor: { phase: 'finished' },
  };
  expect(await store.commit({ record, expected: 'new' })).toBe('saved');
  await store.close();
  return data;
}

async function kept(data: string): Promise<WalkRecord> {
  const store = storeIn(data);
  const record = await store.load(id);
  await store.close();
  if (!record) throw new Error('The walk is gone.');
  return record;
}

describe('what-if', () => {
  it('shows the list move for an answer file', async () => {
    const run = await runCommand([
      'what-if',
      fernhollow,
      '--done',
      'take-out-mulch,rake-leaves',
      '--format',
      'json',
    ]);
    expect(run.code).toBe(0);
    const told = JSON.parse(run.out);
    expect(told.left).toBeLessThan(0.8);
    expect(told.closed.length).toBeGreaterThan(0);
    expect(told.opened).toEqual([]);
    expect(
      told.list.some(
        (line: { now: number; before: number | null }) => line.before !== null && line.before !== line.now,
      ),
    ).toBe(true);
    expect(told.gone.length).toBeGreaterThan(0);
  });

  it('takes answers as an answer file does, side by side, and leaves the kept walk as it is', async () => {
    const data = await withWalk();
    const before = await kept(data);
    const run = await runCommand(
      ['what-if', 'abcd', '--set', 'zone0.leaves={ front: no }', '--set', 'openings.glass=single'],
      [],
      data,
    );
    expect(run.code).toBe(0);
    expect(run.out).toContain('Nothing was changed in the walk itself.');
    expect(run.out).toMatch(/ways in are new/);
    expect(await kept(data)).toEqual(before);
  });

  it.each([
    [['what-if', fernhollow, '--done', 'take-out-shrub'], 'Did you mean "take-out-shrubs"?'],
    [['what-if', fernhollow, '--set', 'openings.glas=single'], 'Did you mean "openings.glass"?'],
    [['what-if', fernhollow, '--set', 'single'], '"single" is not a change'],
    [['what-if', fernhollow], 'Suppose something'],
    [['what-if', 'nowhere.yaml', '--done', 'new-roof'], 'There is no file "nowhere.yaml"'],
    [['compare', 'nowhere.yaml'], 'There is no file "nowhere.yaml"'],
    [['done', 'new-roof', '--date', '2026-02-30'], 'is not a day'],
    [['walk', '--answers', fernhollow, '--budget', 'much'], 'is not an amount'],
  ])('says what is wrong and what to do: %j', async (argv, said) => {
    const run = await runCommand([...argv]);
    expect(run.code).toBe(2);
    expect(run.err).toContain(said);
    expect(run.out).toBe('');
  });
});

describe('an answer file that speaks of danger', () => {
  it.each(['what-if', 'compare'])('gets nothing but the order to leave from %s', async (command) => {
    const file = join(mkdtempSync(join(tmpdir(), 'roofdown-')), 'house.yaml');
    writeFileSync(file, 'about.danger: yes\nopenings.glass: single\n');
    const run = await runCommand([
      command,
      file,
      ...(command === 'what-if' ? ['--set', 'openings.glass=dual'] : []),
    ]);
    expect(run.code).toBe(3);
    expect(run.out.toLowerCase()).toContain('leave');
    expect(run.out).not.toContain('ways in');
  });
});

describe('done and compare', () => {
  it('keeps what was done with its day, goes on from there, and shows before and after', async () => {
    const data = await withWalk();
    const run = await runCommand(
      ['done', 'take-out-mulch@front', 'rake-leaves', '--date', '2026-05-30'],
      [],
      data,
    );
    expect(run.code).toBe(0);
    expect(run.out).toContain('(2026-05-30)');
    const record = await kept(data);
    expect(record.done).toEqual([
      { action: 'take-out-mulch@front', date: '2026-05-30' },
      { action: 'rake-leaves@front', date: '2026-05-30' },
    ]);
    expect(record.earlier).toEqual([{ date: '2026-05-30', sheet: record.sheet }]);
    const shown = JSON.parse((await runCommand(['walks', 'show', 'abcd', '--format', 'json'], [], data)).out);
    const ids = shown.actions.map((one: { id: string }) => one.id);
    expect(ids).not.toContain('take-out-mulch@front');
    expect(ids).toContain('take-out-shrubs@front');
    const compared = JSON.parse((await runCommand(['compare', '--format', 'json'], [], data)).out);
    expect(compared.closed.length).toBeGreaterThan(0);
    expect(compared.left).toBeLessThan(0.8);
    const again = await runCommand(['done', 'take-out-mulch'], [], data);
    expect(again.code).toBe(2);
    expect((await runCommand(['done', 'take-out-mulch', 'rake-leaves', '--undo'], [], data)).code).toBe(0);
    expect((await kept(data)).done).toBeUndefined();
  });

  it('compares two answer files', async () => {
    const run = await runCommand([
      'compare',
      fernhollow,
      'tests/houses/larkspur-way-41.yaml',
      '--format',
      'markdown',
    ]);
    expect(run.code).toBe(0);
    expect(run.out).toContain('# Before and after');
    expect(run.out).toContain('The list is empty.');
  });
});

describe('a report with a budget', () => {
  const report = async (argv: readonly string[]) =>
    JSON.parse((await runCommand(['walk', '--answers', fernhollow, '--format', 'json', ...argv])).out);

  it('says what fits into money and hours, and how firm each rank is', async () => {
    const { planning, actions } = await report(['--budget', '600', '--hours', '12']);
    expect(planning.budget.limits).toEqual({ money: 600, hours: 12 });
    expect(planning.budget.exact).toBe(true);
    expect(planning.budget.actions.length).toBeGreaterThan(2);
    expect(planning.budget.money.high).toBeLessThanOrEqual(600);
    expect(planning.curve.points.length).toBe(planning.budget.actions.length + 1);
    for (const { stability } of actions) expect(stability.from).toBeLessThanOrEqual(stability.to);
  });

  it('reckons with prices of one’s own', async () => {
    const prices = join(mkdtempSync(join(tmpdir(), 'roofdown-')), 'prices.yaml');
    writeFileSync(prices, 'prices:\n  mesh: 100\n  haul-load: 1\n');
    const { planning, actions } = await report(['--budget', '600', '--hours', '12', '--prices', prices]);
    const mesh = actions.find((one: { id: string }) => one.id === 'mesh-vents@left');
    expect(mesh.cost.lines[0]).toMatchObject({ id: 'mesh', low: 100, high: 100, source: 'own-prices' });
    expect(planning.budget.actions.map((one: { id: string }) => one.id)).not.toContain('mesh-vents@left');
    writeFileSync(prices, 'prices:\n  mehs: 100\n');
    const run = await runCommand(['walk', '--answers', fernhollow, '--prices', prices]);
    expect(run.code).toBe(2);
    expect(run.err).toContain('Did you mean "mesh"?');
  });

  it.each(['text', 'markdown', 'html'])('tells it in %s', async (format) => {
    const { out } = await runCommand([
      'walk',
      '--answers',
      fernhollow,
      '--budget',
      '600',
      '--format',
      format,
    ]);
    for (const part of [
      'What fits into your budget',
      'How far this order can be trusted',
      'What is left as the work goes on',
    ]) {
      expect(out).toContain(part);
    }
  });
});

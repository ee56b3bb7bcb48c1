import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { WalkId } from '../../src/conversation/record.ts';
import { createGroupCommit } from '../../src/storage/sqlite/group-commit.ts';
import { migrate } from '../../src/storage/sqlite/migrate.ts';
import { migrations } from '../../src/storage/sqlite/migrations.ts';
import { busyTimeoutMilliseconds, openDatabase } from '../../src/storage/sqlite/open-database.ts';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { describeStore } from './store-contract.ts';
import { reply, walk } from './walks.ts';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-store-'));
  file = join(folder, 'walks.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describeStore('SQLite', async (labelOf) => ({
  store: createSqliteStore({ file, labelOf }),
  cleanUp: async () => undefined,
}));

function change(sql: string, ...values: readonly (string | number)[]): void {
  const db = new Database(file);
  db.prepare(sql).run(...values);
  db.close();
}

describe('opening the database file', () => {
  it('has the write-ahead log, full synchronisation and a waiting time', () => {
    const db = openDatabase(file);
    expect(db.prepare('PRAGMA journal_mode').all()).toEqual([{ journal_mode: 'wal' }]);
    expect(db.prepare('PRAGMA synchronous').all()).toEqual([{ synchronous: 2 }]);
    expect(db.prepare('PRAGMA busy_timeout').all()).toEqual([{ timeout: busyTimeoutMilliseconds }]);
    db.close();
  });

  it('refuses a place where the write-ahead log is not to be had', () => {
    expect(() => openDatabase(':memory:')).toThrow(/did not take journal_mode = WAL/);
  });

  it('says which file is not a database and leaves it alone', () => {
    writeFileSync(file, 'these are not walks, but the notes of somebody else'.repeat(20));
    expect(() => createSqliteStore({ file })).toThrow(/walks\.sqlite cannot be opened/);
  });

  it('names the folder that is not there', () => {
    expect(() => createSqliteStore({ file: join(folder, 'no', 'walks.sqlite') })).toThrow(
      expect.objectContaining({ code: 'cannotOpen' }),
    );
  });
});

describe('the tables', () => {
  it('use the column types TEXT and INTEGER only', async () => {
    await createSqliteStore({ file }).close();
    const db = new Database(file);
    const tables = db.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").all() as {
      name: string;
    }[];
    const types = tables.flatMap(({ name }) =>
      db.prepare(`SELECT type FROM pragma_table_info('${name}')`).all(),
    );
    db.close();
    expect(tables.map((table) => table.name).sort()).toEqual([
      'deliveries',
      'hand_overs',
      'messages',
      'migrations',
      'walks',
    ]);
    expect(new Set((types as { type: string }[]).map((column) => column.type))).toEqual(
      new Set(['TEXT', 'INTEGER']),
    );
  });

  it('are numbered from 1 without a gap', () => {
    expect(migrations.map((step) => step.number)).toEqual(migrations.map((_, index) => index + 1));
  });

  it('keep what was there when a later step is added, and apply each step once', async () => {
    const store = createSqliteStore({ file });
    await store.commit({ record: walk('w'), expected: 'new' });
    await store.close();
    const db = openDatabase(file);
    const next = [
      ...migrations,
      { number: migrations.length + 1, name: 'later', sql: 'CREATE TABLE later (id TEXT)' },
    ];
    migrate(db, file, next);
    migrate(db, file, next);
    expect(db.prepare('SELECT count(*) AS walks FROM walks').all()).toEqual([{ walks: 1 }]);
    db.close();
    expect(() => createSqliteStore({ file })).toThrow(/written by a newer roofdown/);
  });

  it('go back to where they were when a step fails halfway, and go on from there', () => {
    const db = openDatabase(file);
    const broken = {
      number: 1,
      name: 'broken',
      sql: 'CREATE TABLE half (id TEXT); CREATE TABLE half (id TEXT);',
    };
    expect(() => migrate(db, file, [broken])).toThrow(/step 1, broken/);
    expect(db.prepare("SELECT name FROM sqlite_master WHERE name = 'half'").all()).toEqual([]);
    migrate(db, file, migrations);
    expect(db.prepare('SELECT number FROM migrations').all()).toEqual(
      migrations.map(({ number }) => ({ number })),
    );
    db.close();
  });
});

describe('a row that no longer reads', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['is not JSON', '{"id": "w", '],
    ['lacks a field', JSON.stringify({ ...walk('w'), sheet: undefined })],
    [
      'has an answer of an unknown status',
      JSON.stringify({ ...walk('w'), sheet: { a: { status: 'maybe' } } }),
    ],
    ['holds another walk', JSON.stringify(walk('other'))],
  ];

  it.each(cases)('is reported with the id of the walk when it %s, and stays', async (_, data) => {
    const store = createSqliteStore({ file });
    await store.commit({ record: walk('w'), expected: 'new' });
    await store.commit({ record: walk('fine'), expected: 'new' });
    change('UPDATE walks SET data = ? WHERE id = ?', data, 'w');
    await expect(store.load('w' as WalkId)).rejects.toMatchObject({
      code: 'unreadableWalk',
      where: 'w',
      message: expect.stringContaining('The walk w in '),
    });
    expect(await store.load('fine' as WalkId)).toEqual(walk('fine'));
    expect((await store.list()).map((line) => line.id)).toEqual(['fine', 'w']);
    expect(await store.commit({ record: walk('w'), expected: 'new' })).toBe('conflict');
    await store.close();
    const db = new Database(file);
    expect(db.prepare('SELECT data FROM walks WHERE id = ?').all('w')).toEqual([{ data }]);
    db.close();
  });

  it('names the message and the walk when a stored reply cannot be read', async () => {
    const store = createSqliteStore({ file });
    await store.commit({
      record: walk('w'),
      expected: 'new',
      message: { channel: 'sms', id: 'm1', reply: reply(1) },
    });
    change('UPDATE messages SET reply = ?', '{"parts": 4}');
    await expect(store.replyTo('sms', 'm1')).rejects.toThrow(/message m1 of sms, walk w/);
    await store.close();
  });

  it('keeps a field that this version does not know', async () => {
    const store = createSqliteStore({ file });
    await store.commit({ record: { ...walk('w'), laterField: { a: 1 } } as never, expected: 'new' });
    expect(await store.load('w' as WalkId)).toMatchObject({ laterField: { a: 1 } });
    await store.close();
  });
});

describe('commits of one moment', () => {
  it('go into one transaction, and one that fails takes no other with it', async () => {
    const db = openDatabase(file);
    const statements: string[] = [];
    const exec = db.exec.bind(db);
    db.exec = (sql) => {
      statements.push(sql);
      return exec(sql);
    };
    exec('CREATE TABLE t (n INTEGER PRIMARY KEY)');
    const group = createGroupCommit(db);
    const insert = (n: number) => group.run(() => db.prepare('INSERT INTO t VALUES (?)').run(n).changes);
    const failing = group.run(() => {
      db.prepare('INSERT INTO t VALUES (99)').run();
      throw new Error('this turn failed');
    });
    const outcomes = await Promise.allSettled([insert(1), failing, insert(1), insert(2)]);
    expect(outcomes.map((outcome) => outcome.status)).toEqual([
      'fulfilled',
      'rejected',
      'rejected',
      'fulfilled',
    ]);
    expect(db.prepare('SELECT n FROM t ORDER BY n').all()).toEqual([{ n: 1 }, { n: 2 }]);
    expect(statements.filter((sql) => sql === 'BEGIN IMMEDIATE')).toHaveLength(1);
    expect(statements.filter((sql) => sql === 'COMMIT')).toHaveLength(1);
    db.close();
  });

  it('all fail when the commit itself fails, and the next group works', async () => {
    const db = openDatabase(file);
    const exec = db.exec.bind(db);
    exec('CREATE TABLE t (n INTEGER PRIMARY KEY)');
    let broken = true;
    db.exec = (sql) => {
      if (broken && sql === 'COMMIT') throw new Error('disk full');
      return exec(sql);
    };
    const group = createGroupCommit(db);
    const insert = (n: number) => group.run(() => db.prepare('INSERT INTO t VALUES (?)').run(n).changes);
    const outcomes = await Promise.allSettled([insert(1), insert(2)]);
    expect(outcomes.map((outcome) => outcome.status)).toEqual(['rejected', 'rejected']);
    broken = false;
    expect(await insert(3)).toBe(1);
    expect(db.prepare('SELECT n FROM t').all()).toEqual([{ n: 3 }]);
    db.close();
  });

  it('are written before the store closes', async () => {
    const store = createSqliteStore({ file });
    const kept = store.commit({ record: walk('w'), expected: 'new' });
    await store.close();
    expect(await kept).toBe('saved');
    await expect(store.commit({ record: walk('x'), expected: 'new' })).rejects.toThrow(/closed/);
    const again = createSqliteStore({ file });
    expect(await again.load('w' as WalkId)).toEqual(walk('w'));
    await again.close();
  });
});

describe('two programs on one file', () => {
  it('see each other and never overwrite a turn of the other', async () => {
    const one = createSqliteStore({ file });
    const two = createSqliteStore({ file });
    await one.commit({ record: walk('w', { revision: 1 }), expected: 'new' });
    expect(await two.commit({ record: walk('w', { revision: 2 }), expected: 1 })).toBe('saved');
    expect(await one.commit({ record: walk('w', { revision: 2, flow: 'late' }), expected: 1 })).toBe(
      'conflict',
    );
    expect(await one.load('w' as WalkId)).toEqual(walk('w', { revision: 2 }));
    await one.close();
    await two.close();
  });
});

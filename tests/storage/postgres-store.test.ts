import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WalkId } from '../../src/conversation/record.ts';
import { postgresMigrations } from '../../src/storage/postgres/migrations.ts';
import { createPostgresStore } from '../../src/storage/postgres/postgres-store.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { describeStore } from './store-contract.ts';
import { reply, walk } from './walks.ts';

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
}, 60_000);
afterAll(() => postgres.stop());

let emptied: string | undefined;

describeStore('PostgreSQL', async (labelOf) => {
  emptied ??= await postgres.newDatabase();
  const url = emptied;
  const store = await createPostgresStore({ url, labelOf, connections: 4 });
  return {
    store,
    cleanUp: async () => void (await query(url, 'TRUNCATE walks, messages, deliveries, hand_overs')),
  };
});

async function query(url: string, text: string, values: unknown[] = []) {
  const client = new Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query(text, values);
  await client.end();
  return rows as Record<string, unknown>[];
}

describe('the tables in PostgreSQL', () => {
  it('are those of version 18, with the column types TEXT and INTEGER only', async () => {
    expect(await postgres.version()).toMatch(/^18\./);
    const url = await postgres.newDatabase();
    await (await createPostgresStore({ url })).close();
    const rows = await query(
      url,
      "SELECT DISTINCT data_type FROM information_schema.columns WHERE table_schema = 'public' ORDER BY 1",
    );
    expect(rows.map((row) => row.data_type)).toEqual(['integer', 'text']);
  });

  it('are made once by eight servers that start at the same moment', async () => {
    const url = await postgres.newDatabase();
    const stores = await Promise.all(
      Array.from({ length: 8 }, () => createPostgresStore({ url, connections: 2 })),
    );
    const rows = await query(url, 'SELECT number FROM migrations ORDER BY number');
    expect(rows.map((row) => row.number)).toEqual([0, ...postgresMigrations.map((step) => step.number)]);
    await Promise.all(stores.map((store) => store.close()));
  });

  it('are finished by the next start when a step was cut short', async () => {
    const url = await postgres.newDatabase();
    await query(url, postgresMigrations[0]?.statements[0] ?? '');
    const store = await createPostgresStore({ url });
    expect(await store.commit({ record: walk('w'), expected: 'new' })).toBe('saved');
    await store.close();
  });

  it('are left alone when a newer program wrote them', async () => {
    const url = await postgres.newDatabase();
    await (await createPostgresStore({ url })).close();
    await query(url, "INSERT INTO migrations VALUES (999, 'later')");
    await expect(createPostgresStore({ url })).rejects.toMatchObject({ code: 'newerStore' });
  });
});

describe('servers on one PostgreSQL', () => {
  it('lose none of 60 answers given through three of them to one walk, and double none', async () => {
    const url = await postgres.newDatabase();
    const stores = await Promise.all([1, 2, 3].map(() => createPostgresStore({ url, connections: 4 })));
    await stores[0]?.commit({ record: walk('busy'), expected: 'new' });
    const outcomes = await Promise.all(
      Array.from({ length: 60 }, async (_, number) => {
        const store = stores[number % 3];
        for (;;) {
          const loaded = await store?.load('busy' as WalkId);
          if (!store || !loaded) throw new Error('the walk is gone');
          const revision = loaded.revision + 1;
          const sheet = { ...loaded.sheet, [`q${number}`]: { status: 'given', value: number } as const };
          const message = { channel: 'test', id: `m${number}`, reply: reply(number) };
          const kept = await store.commit({
            record: { ...loaded, sheet, revision },
            expected: loaded.revision,
            message,
          });
          if (kept !== 'conflict') return kept;
        }
      }),
    );
    expect(new Set(outcomes)).toEqual(new Set(['saved']));
    const kept = await stores[1]?.load('busy' as WalkId);
    expect(Object.keys(kept?.sheet ?? {})).toHaveLength(60);
    expect(kept?.revision).toBe(60);
    await Promise.all(stores.map((store) => store.close()));
  });

  it('answer a message once that reaches two of them at the same moment', async () => {
    const url = await postgres.newDatabase();
    const stores = await Promise.all([1, 2].map(() => createPostgresStore({ url, connections: 2 })));
    const turn = (number: number) =>
      ({
        record: walk(`w${number}`),
        expected: 'new',
        message: { channel: 'sms', id: 'm', reply: reply(number) },
      }) as const;
    const outcomes = await Promise.all(stores.map((store, number) => store.commit(turn(number))));
    expect([...outcomes].sort()).toEqual(['saved', 'seen']);
    await Promise.all(stores.map((store) => store.close()));
  });

  it('say that nothing was kept while the database is away, without a word of what was sent, and go on after', async () => {
    const url = await postgres.newDatabase();
    const store = await createPostgresStore({ url });
    await store.commit({ record: walk('w'), expected: 'new' });
    await postgres.restart();
    // The connections of before are broken; at most each of them is noticed once.
    await store.load('w' as WalkId).catch(() => undefined);
    expect(await store.load('w' as WalkId)).toEqual(walk('w'));
    const away = createPostgresStore({ url: url.replace(/:\d+\//, ':1/') });
    await expect(away).rejects.toMatchObject({ name: 'StorageError', code: 'unavailable' });
    await store.close();
  });

  it('name a walk and a reply that cannot be read, and leave them', async () => {
    const url = await postgres.newDatabase();
    const store = await createPostgresStore({ url });
    await store.commit({
      record: walk('w'),
      expected: 'new',
      message: { channel: 'sms', id: 'm', reply: reply(1) },
    });
    await query(url, "UPDATE walks SET data = '{'");
    await query(url, "UPDATE messages SET reply = '[]'");
    await expect(store.load('w' as WalkId)).rejects.toMatchObject({ code: 'unreadableWalk' });
    await expect(store.replyTo('sms', 'm')).rejects.toMatchObject({ code: 'unreadableReply' });
    await store.close();
  });

  it('keep a label with a zero character in it', async () => {
    const url = await postgres.newDatabase();
    const store = await createPostgresStore({ url, labelOf: () => 'Kiln\0 Road' });
    const notes = [{ text: 'zero \0 and half a pair \ud83c' }];
    expect(await store.commit({ record: walk('w', { notes }), expected: 'new' })).toBe('saved');
    expect((await store.list())[0]?.label).toBe('Kiln Road');
    expect((await store.load('w' as WalkId))?.notes).toEqual(notes);
    await store.close();
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WalkId } from '../../src/conversation/record.ts';
import { createPostgresStore } from '../../src/storage/postgres/postgres-store.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { post, type ServerProcess, serverStarter } from './server-process.ts';

let folder: string;
let postgres: TestPostgres;
let start: (settings: Readonly<Record<string, string>>) => Promise<ServerProcess>;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-cluster-'));
  [postgres, start] = await Promise.all([startPostgres(), serverStarter(folder)]);
}, 60_000);
afterAll(async () => {
  await postgres.stop();
  rmSync(folder, { recursive: true, force: true });
}, 30_000);

/** What a client was told of one message. */
interface Acknowledged {
  readonly id: string;
  readonly revision: number;
}

/**
 * Says the same messages to whichever server answers, again with the same id until one does, as a carrier would;
 * at most for a number of attempts.
 */
async function sayUntilAnswered(
  ports: () => readonly number[],
  path: string,
  body: unknown,
  id: string,
): Promise<Record<string, unknown>> {
  for (let attempt = 0; attempt < 200; attempt += 1) {
    const all = ports();
    const port = all[(attempt + id.length) % all.length] ?? 0;
    const answered = await post(port, path, body, id).catch(() => undefined);
    if (answered && answered.status < 300) return answered.body;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`nobody answered ${id}`);
}

describe('three servers on one PostgreSQL', () => {
  it('lose no acknowledged answer and double none while one is killed and the database is restarted', async () => {
    const url = await postgres.newDatabase();
    const servers = await Promise.all(
      [1, 2, 3].map(() => start({ ROOFDOWN_DATABASE_URL: url, ROOFDOWN_DATABASE_POOL: '4' })),
    );
    const alive = new Set(servers.map((server) => server.port));
    const ports = () => [...alive];
    const messages = 40;
    let acknowledgedInAll = 0;
    const until = (share: number) =>
      new Promise<void>((resolve) => {
        const timer = setInterval(() => {
          if (acknowledgedInAll < share * messages * 6) return;
          clearInterval(timer);
          resolve();
        }, 5);
      });
    // Six walks, each written to by two clients at once; "where am i" changes nothing but the revision.
    const walks = await Promise.all(
      [0, 1, 2, 3, 4, 5].map((n) => sayUntilAnswered(ports, '/walks', {}, `start-${n}`)),
    );
    const client = async (walk: string, from: number): Promise<Acknowledged[]> => {
      const got: Acknowledged[] = [];
      for (let n = from; n < messages; n += 2) {
        const id = `${walk}-${n}`;
        const body = { text: n % 5 === 4 ? 'skip' : 'where am i' };
        const reply = await sayUntilAnswered(ports, `/walks/${walk}/messages`, body, id);
        got.push({ id, revision: Number(reply.revision) });
        acknowledgedInAll += 1;
      }
      return got;
    };
    const load = Promise.all(
      walks.map(async ({ walk }) =>
        (await Promise.all([client(String(walk), 0), client(String(walk), 1)])).flat(),
      ),
    );
    const [first] = servers;
    await until(0.25);
    expect(await first?.end('SIGKILL')).toBe('SIGKILL');
    alive.delete(first?.port ?? 0);
    await until(0.5);
    await postgres.restart();
    await until(0.75);
    const fourth = await start({ ROOFDOWN_DATABASE_URL: url });
    alive.add(fourth.port);
    const acknowledged = await load;

    const store = await createPostgresStore({ url });
    for (const [n, { walk }] of walks.entries()) {
      const got = acknowledged[n] ?? [];
      const record = await store.load(String(walk) as WalkId);
      // One revision for the start and one for each message: none lost, none counted twice.
      expect(record?.revision).toBe(1 + messages);
      expect(got.map((one) => one.revision).sort((a, b) => a - b)).toEqual(
        Array.from({ length: messages }, (_, at) => at + 2),
      );
    }
    // A repetition after everything still gets the reply of then.
    const [sample] = acknowledged[0] ?? [];
    const again = await sayUntilAnswered(
      ports,
      `/walks/${walks[0]?.walk}/messages`,
      { text: 'skip' },
      sample?.id ?? '',
    );
    expect(again.revision).toBe(sample?.revision);
    await store.close();
    // Losing the database ended none of them.
    const [, ...others] = [...servers, fourth];
    expect(await Promise.all(others.map((server) => server.end('SIGTERM')))).toEqual([0, 0, 0]);
  }, 90_000);

  it('keep 50 messages said at once to one walk through all of them', async () => {
    const url = await postgres.newDatabase();
    const servers = await Promise.all([1, 2].map(() => start({ ROOFDOWN_DATABASE_URL: url })));
    const ports = () => servers.map((server) => server.port);
    const { walk } = await sayUntilAnswered(ports, '/walks', {}, 'start');
    const replies = await Promise.all(
      Array.from({ length: 50 }, (_, n) =>
        sayUntilAnswered(
          ports,
          `/walks/${walk}/messages`,
          { text: 'where am i' },
          `m${'x'.repeat(n % 2)}${n}`,
        ),
      ),
    );
    expect(replies.map((one) => Number(one.revision)).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 50 }, (_, at) => at + 2),
    );
    await Promise.all(servers.map((server) => server.end('SIGTERM')));
  }, 60_000);
});

describe('a server that is asked to end', () => {
  it('answers what is in flight, is ready no more, says so in its log, and ends well', async () => {
    const file = join(folder, 'stopping.sqlite');
    const server = await start({ ROOFDOWN_DATABASE_FILE: file });
    const begun = await post(server.port, '/walks', {}, 'start');
    const path = `/walks/${begun.body.walk}/messages`;
    const inFlight = Array.from({ length: 30 }, (_, n) =>
      post(server.port, path, { text: 'where am i' }, `m${n}`),
    );
    // The first answer shows that the others have been sent.
    await Promise.race(inFlight);
    const ended = server.end('SIGTERM');
    const settled = await Promise.allSettled(inFlight);
    const answered = settled.filter((one) => one.status === 'fulfilled' && one.value.status === 200);
    expect(await ended).toBe(0);
    expect(answered.length).toBeGreaterThan(0);
    // Whatever was not answered was not taken: no turn was cut short.
    const { createSqliteStore } = await import('../../src/storage/sqlite/sqlite-store.ts');
    const store = createSqliteStore({ file });
    const record = await store.load(String(begun.body.walk) as WalkId);
    expect(record?.revision).toBe(1 + answered.length);
    await store.close();
    const log = server.log
      .filter((line) => line.startsWith('{'))
      .map((line) => JSON.parse(line) as { msg: string });
    expect(log.map((line) => line.msg)).toEqual(
      expect.arrayContaining(['listening', 'request', 'stopping', 'stopped']),
    );
  }, 30_000);
});

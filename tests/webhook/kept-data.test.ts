import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { phone, type Talk, talkOn } from './channel-contract.ts';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'roofdown-kept-'));
  file = join(folder, 'server.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Every byte of the database, its write-ahead log and whatever else lies beside it. */
const everyByte = () =>
  readdirSync(folder)
    .map((name) => readFileSync(join(folder, name)).toString('latin1'))
    .join('');

const label = 'Kiln cottage zzyzx';

/** A walk up to the question for its label, which is answered. */
async function answerLabel(talk: Talk): Promise<void> {
  await talk.arrive();
  for (let turn = 0; turn < 30; turn += 1) {
    const ask = talk.replies.at(-1)?.ask;
    if (ask?.kind === 'text') {
      await talk.type(label);
      return;
    }
    await talk.type(ask?.key === 'about.danger' ? 'no' : 'skip');
  }
  throw new Error('no question asks for a text');
}

describe('the database file', () => {
  it.each(['sms', 'telegram'] as const)('of a walk on %s holds no number of the person', async (channel) => {
    const store = createSqliteStore({ file });
    const talk = talkOn(channel, store);
    await answerLabel(talk);
    const bytes = everyByte();
    expect(bytes).toContain(label);
    for (const number of [phone, phone.slice(1), '5550142', '"4242"', '_4242'])
      expect(bytes).not.toContain(number);
    const [kept] = await store.list();
    expect(kept?.id).toMatch(new RegExp(`^${channel}_[A-Za-z0-9_-]{43}$`, 'u'));
    await store.close();
  });

  it('holds nothing of an erased walk: not its answers, not its id', async () => {
    const store = createSqliteStore({ file });
    const talk = talkOn('sms', store);
    await answerLabel(talk);
    const [kept] = await store.list();
    await talk.type('forget me');
    expect(everyByte()).toContain(label);
    await talk.type('yes');
    const bytes = everyByte();
    expect(bytes).not.toContain(label);
    expect(bytes).not.toContain(kept?.id ?? 'no walk');
    expect(bytes).not.toContain('about.danger');
    await store.close();
  });

  it('keeps everything through a pause and after STOP', async () => {
    const store = createSqliteStore({ file });
    const talk = talkOn('sms', store);
    await answerLabel(talk);
    const [before] = await store.list();
    await talk.type('pause');
    expect(await store.list()).toMatchObject([
      { id: before?.id, answered: before?.answered, phase: 'paused' },
    ]);
    await store.close();
  });

  it('holds nothing of walks that were swept away', async () => {
    const store = createSqliteStore({ file });
    await answerLabel(talkOn('sms', store));
    expect(
      await store.sweep({
        walksBefore: '2027-01-01T00:00:00.000Z',
        messagesBefore: '2027-01-01T00:00:00.000Z',
      }),
    ).toBe(1);
    expect(everyByte()).not.toContain(label);
    await store.close();
  });
});

describe('the log', () => {
  it('holds no answer, no number, no id of a walk and no token of a link', async () => {
    const store = createSqliteStore({ file });
    const talk = talkOn('sms', store);
    await answerLabel(talk);
    await talk.type('finish');
    const link = /\/r\/([\w.-]+)/u.exec(await talk.type('yes'))?.[1] ?? 'no link';
    await talk.webhook.fetch(new Request(`http://127.0.0.1/r/${link}`));
    const [kept] = await store.list();
    Object.assign(talk.site.shell.store, {
      load: () => Promise.reject(new Error(`broken at ${label} of ${phone}`)),
    });
    const broken = await talk.type('no').catch((error: Error) => error.message);
    expect(broken).toContain('A fault of ours.');
    const log = JSON.stringify(talk.lines);
    expect(talk.lines.filter((line) => line.what === 'request').length).toBeGreaterThan(5);
    expect(talk.lines.some((line) => line.level === 'error')).toBe(true);
    for (const secret of [label, phone, '5550142', kept?.id ?? '', link, 'skip', 'finish'])
      expect(log).not.toContain(secret);
    await store.close();
  });
});

import { describe, expect, it } from 'vitest';
import { createMemoryStore } from '../../../src/storage/memory/memory-store.ts';
import { sign } from '../../../src/webhook/standard-webhooks.ts';
import { walk } from '../../storage/walks.ts';
import { realProgramme } from '../../support/programme.ts';
import { signedRequest } from '../channel-contract.ts';
import { openSettings, type TestSite, testSite } from '../test-site.ts';
import { callHandedOver, jsonTalk, openSite } from './hand-over-talk.ts';

const since = '2026-06-12T15:00:00.000Z';

describe('the addresses for programs of volunteers', () => {
  const ask = async (at: TestSite, path: string, body: unknown, id: string) => {
    const response = await at.webhook.fetch(signedRequest(at, path, id, JSON.stringify(body)));
    return { status: response.status, body: (await response.json()) as Record<string, string> };
  };

  it('leave a walk, and give it once; again for some minutes to the same taker', async () => {
    const at = openSite();
    const { volunteer } = await callHandedOver(at);
    const walk = await at.store.load(volunteer.walk() as never);
    const left = await ask(at, '/hand-overs', { walk, to: 'colleague', since }, 'leave-1');
    expect(left.status).toBe(201);
    // Left again: one walk, one code.
    expect((await ask(at, '/hand-overs', { walk, to: 'colleague', since }, 'leave-2')).body).toEqual(
      left.body,
    );
    const code = left.body['code'];
    const taken = await ask(at, '/hand-overs/take', { code }, 'take-1');
    expect(taken.body['walk']).toMatchObject({ sheet: walk?.sheet, notes: walk?.notes });
    expect((await ask(at, '/hand-overs/take', { code }, 'take-1')).body).toEqual(taken.body);
    expect((await ask(at, '/hand-overs/take', { code }, 'take-2')).status).toBe(404);
    at.clock.now = new Date(at.clock.now.getTime() + 11 * 60_000);
    expect((await ask(at, '/hand-overs/take', { code }, 'take-1')).status).toBe(404);
  });

  it.each([
    {},
    { walk: {}, to: 'caller' },
    { walk: { id: 'w' }, to: 'caller' },
    { walk: walk('w') },
    { walk: [], to: 'caller' },
  ])('take no %j for a walk', async (body) => {
    expect((await ask(openSite(), '/hand-overs', body, 'x')).status).toBe(422);
  });

  const strange = {
    sheet: {
      'about.place': { status: 'given', value: 7 },
      'roof.covering': { status: 'given', value: ['tile'] },
      'about.next-house': { status: 'bySide', sides: { front: { status: 'given', value: 'far' } } },
      'no.such': { status: 'notSure' },
    },
    cursor: { phase: 'asking', key: 'no.such' },
    flow: realProgramme().checklist.flow.fingerprint,
  };

  it.each([
    ['answers that are none', strange],
    ['a strange call', { ...strange, call: { since: '2026-06-12T16:00:00Z', opened: ['what'] } }],
    ['the order to leave', { cursor: { phase: 'emergency', pending: { kind: 'safe' } } }],
  ])('take a walk with %s without harm', async (_, changes) => {
    const at = openSite();
    const left = await ask(
      at,
      '/hand-overs',
      { walk: walk('w', changes as never), to: 'colleague', since },
      'leave',
    );
    expect(left.status).toBe(201);
    for (const audience of ['resident', 'volunteer']) {
      const body = { walk: walk(`w ${audience}`, changes as never), to: 'colleague', since };
      const again = await ask(at, '/hand-overs', body, `leave ${audience}`);
      const person = jsonTalk(at, audience);
      const reply = await person.start({ audience, text: again.body['code'] });
      expect(reply.phase).toBe('asking');
      expect((await person.type('help')).phase).toBe('asking');
    }
  });

  it('bring what waits up to date, and take it back', async () => {
    const at = openSite();
    const send = async (method: string, path: string, body: unknown, id: string) => {
      const signed = signedRequest(at, path, id, JSON.stringify(body));
      return (await at.webhook.fetch(new Request(signed, { method }))).status;
    };
    const first = walk('w', { sheet: { 'about.danger': { status: 'given', value: 'no' } } });
    const { body } = await ask(at, '/hand-overs', { walk: first, to: 'caller', since }, 'leave');
    const more = { ...first, sheet: { ...first.sheet, 'roof.covering': { status: 'given', value: 'tile' } } };
    expect(await send('PUT', '/hand-overs', { walk: more, to: 'caller', since }, 'renew')).toBe(204);
    expect(await send('PUT', '/hand-overs', { walk: walk('other'), to: 'caller', since }, 'nothing')).toBe(
      204,
    );
    const { status, body: taken } = await ask(at, '/hand-overs/take', { code: body['code'] }, 'take');
    expect(status).toBe(200);
    expect(taken['walk']).toMatchObject({ sheet: more.sheet });
    const { body: next } = await ask(at, '/hand-overs', { walk: first, to: 'caller', since }, 'leave again');
    expect(next['code']).not.toBe(body['code']);
    const timestamp = Math.floor(at.clock.now.getTime() / 1000);
    const signature = sign(
      at.site.settings.jsonKey ?? new Uint8Array(),
      'gone',
      timestamp,
      'DELETE /hand-overs?walk=w',
    );
    const request = new Request('https://walks.example.org/hand-overs?walk=w', {
      method: 'DELETE',
      headers: {
        'webhook-id': 'gone',
        'webhook-timestamp': String(timestamp),
        'webhook-signature': signature,
      },
    });
    expect((await at.webhook.fetch(request)).status).toBe(204);
    expect((await ask(at, '/hand-overs/take', { code: next['code'] }, 'late')).status).toBe(404);
  });

  it('are closed to whoever has no secret', async () => {
    const request = new Request('https://walks.example.org/hand-overs/take', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{"code":"1"}',
    });
    expect((await openSite().webhook.fetch(request)).status).toBe(401);
  });
});

describe('a waiting walk in the store', () => {
  it('can be read by nobody who has the store alone', async () => {
    const kept: unknown[] = [];
    const store = createMemoryStore();
    const watched = {
      ...store,
      handOvers: {
        ...store.handOvers,
        leave: (waiting: Parameters<typeof store.handOvers.leave>[0]) => {
          kept.push(waiting);
          return store.handOvers.leave(waiting);
        },
      },
    };
    const at = testSite(openSettings, { store: watched });
    const { code } = await callHandedOver(at);
    const bytes = JSON.stringify(kept);
    expect(kept).toHaveLength(1);
    for (const secret of ['0142', 'dogs', 'roof.covering', code, code.replaceAll('-', '')])
      expect(bytes).not.toContain(secret);
  });
});

import { describe, expect, it } from 'vitest';
import { createMemoryStore } from '../../../src/storage/memory/memory-store.ts';
import { walk } from '../../storage/walks.ts';
import { realProgramme } from '../../support/programme.ts';
import { signedRequest, smsRequest, telegramRequest } from '../channel-contract.ts';
import { openSettings, type TestSite, testSite } from '../test-site.ts';

interface Body {
  readonly walk: string;
  readonly phase: string;
  readonly ask: {
    readonly key: string;
    readonly guide: { listen: string; cannotTell: string } | null;
  } | null;
  readonly said: readonly { readonly lines: readonly string[] }[];
  readonly textToSend: string | null;
}

const words = ({ said }: Body) => said.flatMap((one) => one.lines).join('\n');

/** A volunteer or resident on the JSON channel. */
function jsonTalk(site: TestSite, name: string) {
  let walk = '';
  let count = 0;
  const post = async (body: object) => {
    count += 1;
    const path = walk === '' ? '/walks' : `/walks/${walk}/messages`;
    const response = await site.webhook.fetch(
      signedRequest(site, path, `${name}-${count}`, JSON.stringify(body)),
    );
    const reply = (await response.json()) as Body;
    walk = reply.walk;
    return reply;
  };
  return {
    start: (body: object = {}) => post(body),
    type: (text: string) => post({ text }),
    walk: () => walk,
  };
}

const opening = [
  'no',
  'at home',
  'yes',
  'yes',
  '555-0142',
  'tamber county',
  'note two dogs',
  'roof covering: tile',
];

/** A call up to the moment at which the caller agrees that it is handed over. */
async function callHandedOver(site: TestSite) {
  const volunteer = jsonTalk(site, 'volunteer');
  await volunteer.start({ audience: 'volunteer' });
  for (const line of [...opening, 'hand over']) await volunteer.type(line);
  const told = await volunteer.type('yes');
  const code = /Code: ([\d ]{14})/u.exec(words(told))?.[1] ?? '';
  return { volunteer, told, code };
}

const site = (env: Record<string, string> = {}) => testSite({ ...openSettings, ...env });

describe('a call that is handed over', () => {
  it('has a code of twelve digits, told once the caller agreed, with where to send it', async () => {
    const { told, code } = await callHandedOver(site({ ROOFDOWN_REACH: 'to 555-0160 as a text message' }));
    expect(code).toMatch(/^\d{4} \d{4} \d{4}$/);
    expect(words(told)).toContain(`read it back to me: ${code}. Send it to 555-0160 as a text message`);
    expect(words(told)).toContain('48 hours');
    expect(told.phase).toBe('asking');
  });

  it('goes on by text message with the answers, without notes and number, and once only', async () => {
    const at = site();
    const { code } = await callHandedOver(at);
    const text = async (body: string, from: string, id: string) =>
      (await at.webhook.fetch(smsRequest({ From: from, Body: body, MessageSid: id }))).text();
    const first = await text(code, '+15555550143', 'SM1');
    expect(first).toContain('The 3 answers from your call are here');
    expect(first).toContain('What kind of building is it?');
    expect(first).not.toContain('dogs');
    expect(await text(code, '+15555550143', 'SM1')).toBe(first);
    expect(await text(code, '+15555550144', 'SM2')).toContain('That number opens nothing');
    expect(await text('detached', '+15555550143', 'SM3')).not.toContain('What kind of building');
    const kept = await at.store.list();
    const walk = kept.find((one) => one.id.startsWith('sms_') && one.answered > 2);
    const record = walk && (await at.store.load(walk.id));
    expect(record).toMatchObject({ audience: 'resident', notes: [] });
    expect(JSON.stringify(record)).not.toContain('0142');
    expect(record?.call).toBeUndefined();
  });

  it('goes on in a chat with a second volunteer, who gets the notes and the number', async () => {
    const at = site();
    const { code } = await callHandedOver(at);
    let id = 0;
    const type = async (line: string) => {
      id += 1;
      const chat = { id: 77, type: 'private' };
      const update = { update_id: id, message: { message_id: id, from: chat, chat, date: 1, text: line } };
      const response = await at.webhook.fetch(telegramRequest(update));
      return ((await response.json()) as { text: string }).text;
    };
    expect(await type('Guide a caller')).toContain('A call about one house');
    const taken = await type(code);
    expect(taken).toContain('The call is yours now');
    expect(taken).toContain('Call back: 555-0142');
    expect(taken).toContain('two dogs');
    expect(taken).toContain('Listen for: ');
    expect(taken).toContain("If they can't tell: ");
  });

  it('is asked about first where answers stand already, and replaces them only after a yes', async () => {
    const at = site();
    const { code } = await callHandedOver(at);
    const person = jsonTalk(at, 'person');
    await person.start();
    for (const line of ['no', 'california']) await person.type(line);
    expect(words(await person.type(code))).toContain('2 answers here already');
    expect(words(await person.type('no'))).not.toContain('from your call');
    await person.type(code);
    const taken = await person.type('yes');
    expect(words(taken)).toContain('The 3 answers from your call are here');
  });

  it('works until its time is over', async () => {
    const at = site({ ROOFDOWN_CODE_HOURS: '2' });
    const { code } = await callHandedOver(at);
    at.clock.now = new Date(at.clock.now.getTime() + 2 * 3_600_000);
    expect(words(await jsonTalk(at, 'late').start({ text: code }))).toContain('That number opens nothing');
  });

  it('is gone when its walk is erased', async () => {
    const at = site();
    const { code, volunteer } = await callHandedOver(at);
    await volunteer.type('forget me');
    await volunteer.type('yes');
    expect(words(await jsonTalk(at, 'late').start({ text: code }))).toContain('That number opens nothing');
  });

  it('is not found by trying: few tries a minute, and none counts for another person', async () => {
    const at = site();
    const { code } = await callHandedOver(at);
    const guesser = jsonTalk(at, 'guesser');
    await guesser.start();
    const said: string[] = [];
    for (let guess = 0; guess < 7; guess += 1) said.push(words(await guesser.type(`10000000000${guess}`)));
    expect(said.at(0)).toContain('That number opens nothing');
    expect(said.at(-1)).toContain('Please wait a minute');
    expect(words(await guesser.type(code))).toContain('Please wait a minute');
    expect(words(await jsonTalk(at, 'other').start({ text: code }))).toContain('from your call');
  });

  it('stays with the volunteer when the caller says no', async () => {
    const at = site();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'hand over']) await volunteer.type(line);
    expect(words(await volunteer.type('no'))).toContain('Nothing is passed on');
  });

  it('is offered before a call is closed, and the call is closed with a text to send', async () => {
    const at = site();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'roof condition: curled', 'finish']) await volunteer.type(line);
    expect(words(await volunteer.type('yes'))).toContain('I can pass on what you told me');
    expect(words(await volunteer.type('yes'))).toContain('Code: ');
    const closed = await volunteer.type('yes');
    expect(closed.phase).toBe('finished');
    expect(closed.textToSend).toContain('Your house and wildfire, first:');
  });

  it('comes after everything else that matters: an emergency, a number to call back, silence', async () => {
    const at = site();
    const { code } = await callHandedOver(at);
    const person = jsonTalk(at, 'person');
    await person.start();
    await person.type('the house is on fire');
    expect((await person.type(code)).phase).toBe('emergency');
    const volunteer = jsonTalk(at, 'other volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of opening.slice(0, 4)) await volunteer.type(line);
    expect(words(await volunteer.type(code))).toContain('Number to call back');
  });
});

describe('the addresses for programs of volunteers', () => {
  const ask = async (at: TestSite, path: string, body: unknown, id: string) => {
    const response = await at.webhook.fetch(signedRequest(at, path, id, JSON.stringify(body)));
    return { status: response.status, body: (await response.json()) as Record<string, string> };
  };

  it('leave a walk, and give it once; again for some minutes to the same taker', async () => {
    const at = site();
    const { volunteer } = await callHandedOver(at);
    const walk = await at.store.load(volunteer.walk() as never);
    const left = await ask(at, '/hand-overs', { walk }, 'leave-1');
    expect(left.status).toBe(201);
    // Sent again because no answer came: one walk, one code.
    expect((await ask(at, '/hand-overs', { walk }, 'leave-1')).body).toEqual(left.body);
    const code = left.body['code'];
    const taken = await ask(at, '/hand-overs/take', { code }, 'take-1');
    expect(taken.body['walk']).toMatchObject({ sheet: walk?.sheet, notes: walk?.notes });
    expect((await ask(at, '/hand-overs/take', { code }, 'take-1')).body).toEqual(taken.body);
    expect((await ask(at, '/hand-overs/take', { code }, 'take-2')).status).toBe(404);
    at.clock.now = new Date(at.clock.now.getTime() + 11 * 60_000);
    expect((await ask(at, '/hand-overs/take', { code }, 'take-1')).status).toBe(404);
  });

  it.each([[{}], [{ walk: {} }], [{ walk: { id: 'w' } }], [{ walk: [] }]])(
    'take no %j for a walk',
    async (body) => {
      expect((await ask(site(), '/hand-overs', body, 'x')).status).toBe(422);
    },
  );

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
    ['a call without times', { ...strange, call: { since: '2026-06-12T16:00:00Z', opened: ['what'] } }],
    ['the order to leave', { cursor: { phase: 'emergency', pending: { kind: 'safe' } } }],
  ])('take a walk with %s without harm', async (_, changes) => {
    const at = site();
    const left = await ask(at, '/hand-overs', { walk: walk('w', changes as never) }, 'leave');
    expect(left.status).toBe(201);
    for (const audience of ['resident', 'volunteer']) {
      const again = await ask(at, '/hand-overs', { walk: walk('w', changes as never) }, `leave ${audience}`);
      const person = jsonTalk(at, audience);
      const reply = await person.start({ audience, text: again.body['code'] });
      expect(reply.phase).toBe('asking');
      expect((await person.type('help')).phase).toBe('asking');
    }
  });

  it('are closed to whoever has no secret', async () => {
    const request = new Request('https://walks.example.org/hand-overs/take', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{"code":"1"}',
    });
    expect((await site().webhook.fetch(request)).status).toBe(401);
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
    for (const secret of ['0142', 'dogs', 'roof.covering', code, code.replaceAll(' ', '')])
      expect(bytes).not.toContain(secret);
  });
});

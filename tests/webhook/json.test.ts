import { describe, expect, it } from 'vitest';
import { Report } from '../../src/report/report.ts';
import { jsonRequest, testSite } from './test-site.ts';

type Body = Record<string, never> & {
  walk: string;
  revision: number;
  phase: string;
  ask: { key: string; choices: { id: string }[] } | null;
};

async function started(site = testSite()) {
  const response = await site.webhook.fetch(jsonRequest('POST', '/walks', {}));
  const body = (await response.json()) as Body;
  const say = async (message: unknown, headers: Record<string, string> = {}) => {
    const answered = await site.webhook.fetch(
      jsonRequest('POST', `/walks/${body.walk}/messages`, message, headers),
    );
    return { status: answered.status, body: (await answered.json()) as Body };
  };
  return { ...site, response, body, say, path: `/walks/${body.walk}` };
}

const textOf = (body: unknown) => JSON.stringify((body as { said: unknown }).said);

describe('a walk over JSON', () => {
  it('starts with the opening and the first question, at an address of its own', async () => {
    const { response, body } = await started();
    expect(response.status).toBe(201);
    expect(response.headers.get('location')).toBe(`/walks/${body.walk}`);
    expect(response.headers.get('cache-control')).toBe('no-store');
    expect(body.walk).toMatch(/^walk_[A-Za-z0-9_-]{43}$/);
    expect(body.phase).toBe('asking');
    expect(body.ask?.key).toBe('about.danger');
    expect(textOf(body)).toContain('goes round one house');
  });

  it('takes answers in words and as presses, and finishes with a report in every format', async () => {
    const { say, path, webhook } = await started();
    const first = await say({ text: 'no' });
    const place = first.body.ask;
    expect(place?.key).toBe('about.place');
    const option = place?.choices.at(-1)?.id ?? '';
    const pressed = await say({ choose: { key: 'about.place', option, revision: first.body.revision } });
    expect(pressed.body.ask?.key).not.toBe('about.place');
    await say({ text: 'finish' });
    const finished = await say({ text: 'yes' });
    expect(finished.body.phase).toBe('finished');
    const get = (query: string, accept?: string) =>
      webhook.fetch(jsonRequest('GET', `${path}/report${query}`, undefined, accept ? { accept } : {}));
    const json = await get('');
    expect(json.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(Report.safeParse(await json.json()).success).toBe(true);
    for (const [query, accept, type] of [
      ['?format=html', undefined, 'text/html'],
      ['', 'text/markdown', 'text/markdown'],
      ['', 'text/html;q=0.5, text/plain', 'text/plain'],
      ['?format=markdown', 'text/html', 'text/markdown'],
      ['', '*/*', 'application/json'],
    ] as const) {
      const response = await get(query, accept);
      expect(response.headers.get('content-type')).toBe(`${type}; charset=utf-8`);
      expect((await response.text()).length).toBeGreaterThan(500);
    }
    expect((await get('?format=pdf')).status).toBe(406);
    expect((await get('', 'image/png')).status).toBe(406);
  });

  it('shows its place without a turn, and is gone when it is deleted', async () => {
    const { say, path, webhook, store, body } = await started();
    await say({ text: 'no' });
    const place = await webhook.fetch(jsonRequest('GET', path));
    expect(await place.json()).toMatchObject({ walk: body.walk, revision: 2, ask: { key: 'about.place' } });
    expect((await webhook.fetch(jsonRequest('DELETE', path))).status).toBe(204);
    expect((await webhook.fetch(jsonRequest('GET', path))).status).toBe(404);
    expect((await webhook.fetch(jsonRequest('DELETE', path))).status).toBe(404);
    expect((await say({ text: 'no' })).status).toBe(404);
    expect(await store.list()).toEqual([]);
  });

  it('gives a repeated message the same reply and changes nothing, and tells two walks apart', async () => {
    const one = await started();
    const id = { 'webhook-id': 'message-1' };
    const first = await one.say({ text: 'no' }, id);
    const again = await one.say({ text: 'no' }, id);
    expect(again).toEqual(first);
    await one.say({ text: 'skip' }, { 'webhook-id': 'message-2' });
    expect((await one.say({ text: 'no' }, id)).body).toMatchObject({
      revision: 2,
      reply: (first.body as unknown as { reply: object }).reply,
    });
    const other = await started(one);
    expect((await other.say({ text: 'no' }, id)).body.walk).toBe(other.body.walk);
    expect(await one.store.list()).toHaveLength(2);
  });

  it('starts one walk for a repeated start', async () => {
    const { webhook, store } = testSite();
    const start = () => webhook.fetch(jsonRequest('POST', '/walks', {}, { 'webhook-id': 'start-1' }));
    const [a, b] = await Promise.all([start(), start()]);
    expect(await a?.json()).toEqual(await b?.json());
    expect(await store.list()).toHaveLength(1);
  });

  it('says that a press on an earlier choice changed that answer, and refuses one of no question', async () => {
    const { say } = await started();
    const first = await say({ text: 'no' });
    await say({ text: 'skip' });
    const option = first.body.ask?.choices[0]?.id;
    const late = await say({ choose: { key: 'about.place', option, revision: 2 } });
    expect(textOf(late.body)).toContain('earlier question');
    const unknown = await say({ choose: { key: 'no.such', option: 'x', revision: 2 } });
    expect(textOf(unknown.body)).toContain('no longer asked');
  });

  it('takes audience, language and units at the start', async () => {
    const { webhook, store } = testSite();
    const start = { audience: 'volunteer', units: 'metric' };
    const { walk } = (await (await webhook.fetch(jsonRequest('POST', '/walks', start))).json()) as Body;
    expect(await store.load(walk as never)).toMatchObject(start);
  });
});

describe('what is wrong with a request', () => {
  it.each([
    ['POST', '/walks/nobody/messages', { text: 'hi' }, 404, 'unknown-walk'],
    ['GET', '/walks/nobody', undefined, 404, 'unknown-walk'],
    ['GET', '/nowhere', undefined, 404, 'unknown-path'],
    ['GET', '/walks', undefined, 405, 'wrong-method'],
    ['POST', '/sms', { a: 1 }, 404, 'unknown-path'],
    ['POST', '/walks', '{"audience": "nobody"}', 422, 'not-valid'],
    ['POST', '/walks', '{"more": 1}', 422, 'not-valid'],
    ['POST', '/walks', '{', 422, 'not-valid'],
    ['POST', '/walks', JSON.stringify({ text: 'x'.repeat(1001) }), 422, 'not-valid'],
    ['POST', '/walks', JSON.stringify({ text: 'x'.repeat(70_000) }), 413, 'too-large'],
    ['GET', '/deliveries?state=lost', undefined, 422, 'not-valid'],
    ['POST', '/deliveries/nobody/resend', {}, 404, 'unknown-delivery'],
    ['GET', '/r/abc', undefined, 404, 'unknown-path'],
  ])('%s %s is problem details of RFC 9457', async (method, path, body, status, code) => {
    const { webhook } = testSite();
    const response = await webhook.fetch(jsonRequest(method, path, body));
    expect(response.status).toBe(status);
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    const problem = (await response.json()) as Record<string, unknown>;
    // RFC 9457 3.1: type is a URI reference, title a summary of the type, status the same as that of the response.
    expect(problem).toMatchObject({ type: `/problems/${code}`, status });
    const described = await webhook.fetch(jsonRequest('GET', `/problems/${code}`));
    expect(await described.text()).toBe(`${problem.title}\n`);
  });

  it('is said of a body that is not JSON by its type', async () => {
    const { webhook } = testSite();
    const form = jsonRequest('POST', '/walks', 'text=hi', {
      'content-type': 'application/x-www-form-urlencoded',
    });
    expect((await webhook.fetch(form)).status).toBe(415);
  });

  it.each(['http://walks.example.org', 'http://127.0.0.1.example.org', 'http://10.0.0.7'])(
    'is that it came for %s, while there is no secret',
    async (name) => {
      const { webhook, store } = testSite();
      const request = (host: string) => new Request(`${host}/walks`, { method: 'POST' });
      expect((await webhook.fetch(request(name))).status).toBe(421);
      expect(await store.list()).toEqual([]);
      for (const host of ['http://localhost:8080', 'http://[::1]:8080', 'http://127.0.0.1'])
        expect((await webhook.fetch(request(host))).status).toBe(201);
    },
  );

  it('does not repeat what was sent', async () => {
    const { webhook } = testSite();
    const response = await webhook.fetch(jsonRequest('POST', '/walks', { audience: 'secret-of-mine' }));
    expect(await response.text()).not.toContain('secret-of-mine');
  });

  it('stops a body without a stated length at the limit', async () => {
    const { webhook } = testSite();
    const endless = new ReadableStream<Uint8Array>({
      pull: (controller) => controller.enqueue(new Uint8Array(8192).fill(32)),
    });
    const request = new Request('http://127.0.0.1/walks', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: endless,
      duplex: 'half',
    } as RequestInit);
    expect((await webhook.fetch(request)).status).toBe(413);
  });
});

describe('limits', () => {
  it('stop one walk that writes too much, not the others, and never an emergency', async () => {
    const site = testSite({ ROOFDOWN_MESSAGES_PER_MINUTE: '3' });
    const { say, clock } = await started(site);
    await say({ text: 'no' });
    await say({ text: 'skip' });
    const over = await say({ text: 'skip' });
    expect(over).toMatchObject({ status: 429, body: { type: '/problems/too-many' } });
    const danger = await say({ text: 'the house is on fire' });
    expect(danger).toMatchObject({ status: 200, body: { phase: 'emergency' } });
    expect(textOf(danger.body)).toContain('LEAVE NOW');
    const other = await started(site);
    expect((await other.say({ text: 'no' })).status).toBe(200);
    clock.now = new Date(clock.now.getTime() + 60_000);
    expect((await say({ text: 'where am i' })).status).toBe(200);
  });

  it('stop an address that starts too many walks without a signature', async () => {
    const { webhook } = testSite({ ROOFDOWN_STARTS_PER_MINUTE: '2' });
    const start = async (remoteAddress: string) =>
      (await webhook.fetch(jsonRequest('POST', '/walks', {}), { remoteAddress })).status;
    expect([await start('a'), await start('a'), await start('a'), await start('b')]).toEqual([
      201, 201, 429, 201,
    ]);
  });
});

describe('an emergency over JSON', () => {
  it.each([
    ['its first words', { text: 'there is a fire coming' }],
    ['the emergency key', { emergency: true }],
  ])('stops the walk by %s', async (_, message) => {
    const site = testSite();
    const { say, body } = await started(site);
    const reply =
      'text' in message
        ? ((await (await site.webhook.fetch(jsonRequest('POST', '/walks', message))).json()) as Body)
        : (await say(message)).body;
    expect(reply).toMatchObject({ phase: 'emergency', ask: null });
    expect(textOf(reply)).toContain('LEAVE NOW');
    expect(body.phase).toBe('asking');
  });

  it('is followed by one question, before anything else, when the person writes again', async () => {
    const { say } = await started();
    await say({ text: 'I can see flames' });
    const back = await say({ text: 'the roof is tile' });
    expect(textOf(back.body)).toContain('are you safe now');
    expect(back.body).toMatchObject({ phase: 'emergency', ask: null });
    expect((await say({ text: 'yes' })).body).toMatchObject({ phase: 'asking' });
  });

  it('is answered for a walk that is not there', async () => {
    const { webhook } = testSite();
    const response = await webhook.fetch(jsonRequest('POST', '/walks/nobody/messages', { emergency: true }));
    expect(await response.json()).toMatchObject({ phase: 'emergency' });
  });
});

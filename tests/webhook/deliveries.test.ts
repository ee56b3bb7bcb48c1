import { Webhook } from 'standardwebhooks';
import { describe, expect, it } from 'vitest';
import { waitsSeconds } from '../../src/webhook/deliver/backoff.ts';
import { deliverDue } from '../../src/webhook/deliver/deliver-due.ts';
import { readSecret } from '../../src/webhook/standard-webhooks.ts';
import { exampleSecret, jsonRequest, type TestSite, testSite } from './test-site.ts';

const url = 'https://assessor.example.org/walks';
const key = readSecret(exampleSecret) ?? new Uint8Array();
const settings = { ROOFDOWN_DELIVER_TO: url, ROOFDOWN_DELIVER_SECRET: exampleSecret };

interface Got {
  readonly headers: Record<string, string>;
  readonly body: string;
}

/** Another system that answers with these, one after the other, and then 204. */
function receiver(...answers: (number | Error)[]) {
  const got: Got[] = [];
  const send = async (to: string, headers: Record<string, string>, body: string) => {
    expect(to).toBe(url);
    got.push({ headers, body });
    const answer = answers.shift() ?? 204;
    if (answer instanceof Error) throw answer;
    return answer;
  };
  return { got, to: { url, key, send } };
}

/** A walk that is finished over JSON; gives its id. */
async function finishWalk({ webhook }: TestSite): Promise<string> {
  const start = (await (await webhook.fetch(jsonRequest('POST', '/walks', {}))).json()) as { walk: string };
  for (const text of ['no', 'finish', 'yes'])
    await webhook.fetch(jsonRequest('POST', `/walks/${start.walk}/messages`, { text }));
  return start.walk;
}

const round = (site: TestSite, { to }: ReturnType<typeof receiver>) =>
  deliverDue(site.site, to, site.webhook.metrics);
const wait = (site: TestSite, seconds: number) => {
  site.clock.now = new Date(site.clock.now.getTime() + seconds * 1000);
};

describe('a finished walk', () => {
  it('is told once, signed, with its report', async () => {
    const site = testSite(settings);
    const walk = await finishWalk(site);
    const other = receiver();
    expect(await round(site, other)).toBe(1);
    expect(await round(site, other)).toBe(0);
    const [one] = other.got;
    const peer = new Webhook(exampleSecret);
    // The peer compares with the time of now, so the time of the test is signed again for it; the rest is ours.
    expect(one?.headers['webhook-signature']).toBe(
      peer.sign(one?.headers['webhook-id'] ?? '', site.clock.now, one?.body ?? ''),
    );
    expect(JSON.parse(one?.body ?? '')).toMatchObject({
      type: 'walk.finished',
      data: { walk, report: { version: 1, walk: { id: walk } } },
    });
    expect(await site.store.deliveries.list('sent', 9)).toMatchObject([{ walk, attempts: 1 }]);
  });

  it('is told again when it was changed and finished again, and not when nobody is to be told', async () => {
    const site = testSite(settings);
    const walk = await finishWalk(site);
    for (const text of ['change place', 'skip', 'finish', 'yes'])
      await site.webhook.fetch(jsonRequest('POST', `/walks/${walk}/messages`, { text }));
    expect(await round(site, receiver())).toBe(2);
    const silent = testSite();
    await finishWalk(silent);
    expect(await silent.store.deliveries.list('waiting', 9)).toEqual([]);
  });

  it('waits longer after each failure, keeps its id, and is dead after the last', async () => {
    const site = testSite(settings);
    await finishWalk(site);
    const failures = [500, 302, new Error('no route'), ...waitsSeconds.slice(3).map(() => 503), 503];
    const other = receiver(...failures);
    for (const seconds of waitsSeconds) {
      expect(await round(site, other)).toBe(1);
      wait(site, seconds - 1);
      expect(await round(site, other)).toBe(0);
      wait(site, 1);
    }
    expect(await round(site, other)).toBe(1);
    wait(site, 10_000_000);
    expect(await round(site, other)).toBe(0);
    expect(new Set(other.got.map((one) => one.headers['webhook-id'])).size).toBe(1);
    expect(await site.store.deliveries.list('dead', 9)).toMatchObject([
      { attempts: 10, problem: 'answered 503' },
    ]);
    expect(JSON.stringify(site.lines)).toContain('no answer');
  });

  it('is shown while it is dead, and sent again when somebody asks', async () => {
    const site = testSite(settings);
    const walk = await finishWalk(site);
    const gone = receiver(410);
    expect(await round(site, gone)).toBe(1);
    const listed = await site.webhook.fetch(jsonRequest('GET', '/deliveries'));
    const [dead] = (await listed.json()) as { id: string }[];
    expect(dead).toMatchObject({ walk, state: 'dead', problem: 'answered 410' });
    const resend = () => site.webhook.fetch(jsonRequest('POST', `/deliveries/${dead?.id}/resend`, {}));
    expect((await resend()).status).toBe(202);
    expect((await resend()).status).toBe(404);
    const well = receiver();
    expect(await round(site, well)).toBe(1);
    expect(well.got).toHaveLength(1);
  });

  it('is taken by one of two servers, and by the other when that one ended on the way', async () => {
    const site = testSite(settings);
    await finishWalk(site);
    const [due] = await site.store.deliveries.due(site.clock.now.toISOString(), 9);
    if (!due) throw new Error('nothing is due');
    // This is a server that claimed it and was killed before it sent it.
    await site.store.deliveries.claim(due, new Date(site.clock.now.getTime() + 60_000).toISOString());
    const other = receiver();
    expect(await round(site, other)).toBe(0);
    wait(site, 60);
    expect(await Promise.all([round(site, other), round(site, other)])).toContain(1);
    expect(other.got).toHaveLength(1);
  });

  it('is told to nobody once it is erased', async () => {
    const site = testSite(settings);
    const walk = await finishWalk(site);
    await site.webhook.fetch(jsonRequest('DELETE', `/walks/${walk}`));
    const other = receiver();
    expect(await round(site, other)).toBe(0);
    expect(other.got).toEqual([]);
  });
});

import { Webhook } from 'standardwebhooks';
import { describe, expect, it } from 'vitest';
import { readSecret, sign, verify } from '../../src/webhook/standard-webhooks.ts';
import { exampleSecret, openSettings, publicUrl, testSite } from './test-site.ts';

const key = readSecret(exampleSecret) ?? new Uint8Array();

/** A request signed by the library of the specification's authors, as another system would. */
function signedByPeer(method: string, path: string, body: string, now: Date, signedText = body): Request {
  const id = 'msg_1';
  const peer = new Webhook(exampleSecret);
  return new Request(`${publicUrl}${path}`, {
    method,
    headers: {
      'content-type': 'application/json',
      'webhook-id': id,
      'webhook-timestamp': String(Math.floor(now.getTime() / 1000)),
      'webhook-signature': peer.sign(id, now, signedText),
    },
    ...(body === '' ? {} : { body }),
  });
}

describe('signatures of Standard Webhooks', () => {
  // The worked example of the specification and its libraries: secret, id, time and body.
  const id = 'msg_p5jXN8AQM9LWM0D4loKWxJek';
  const timestamp = 1614265330;
  const body = '{"test": 2432232314}';
  const signature = 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=';

  it('are those of the published example', () => {
    expect(sign(key, id, timestamp, body)).toBe(signature);
    const headers = { id, timestamp: String(timestamp), signature };
    expect(verify(key, headers, body, new Date(timestamp * 1000))).toEqual({ id });
  });

  it.each([
    ['a space more in the body', { body: `${body} ` }, 'signature'],
    ['another id', { id: 'msg_2' }, 'signature'],
    ['a time 301 seconds ago', { late: 301 }, 'time'],
    ['a time 301 seconds ahead', { late: -301 }, 'time'],
    ['a time that is no number', { timestamp: '1e9' }, 'time'],
    ['no id', { id: undefined }, 'missing'],
    ['no signature', { signature: undefined }, 'missing'],
    ['another version of signature', { signature: signature.replace('v1,', 'v2,') }, 'signature'],
  ])('do not hold with %s', (_, change, problem) => {
    const { late = 0, body: changed = body, ...headers } = change as { late?: number; body?: string };
    const all = { id, timestamp: String(timestamp), signature, ...headers };
    expect(verify(key, all, changed, new Date((timestamp + late) * 1000))).toEqual({ problem });
  });

  it('hold at the end of the window, and beside another while keys are changed', () => {
    const headers = { id, timestamp: String(timestamp), signature: `v1,AAAA ${signature}` };
    expect(verify(key, headers, body, new Date((timestamp + 300) * 1000))).toEqual({ id });
  });

  it('are taken by the library of the specification', () => {
    const now = new Date();
    const at = Math.floor(now.getTime() / 1000);
    const odd = '{ "text":\t"caf\u00e9 \ud83c\udfe0" }\n';
    const headers = {
      'webhook-id': 'a',
      'webhook-timestamp': String(at),
      'webhook-signature': sign(key, 'a', at, odd),
    };
    expect(new Webhook(exampleSecret).verify(odd, headers)).toEqual({ text: 'café 🏠' });
  });

  it.each([
    '',
    'whsec_',
    'whsec_short',
    'MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw',
    'whsec_not base64 at all, is it',
  ])('need a real secret, not "%s"', (secret) => expect(readSecret(secret)).toBeUndefined());
});

describe('a server with a secret', () => {
  it('takes what another system signed, over the body exactly as sent', async () => {
    const { webhook, clock } = testSite(openSettings);
    const odd = '{   "text" :\n"caf\\u00e9"}';
    expect((await webhook.fetch(signedByPeer('POST', '/walks', odd, clock.now))).status).toBe(201);
  });

  it.each([
    ['POST', '/walks', '{}'],
    ['POST', '/walks/x/messages', '{"text":"no"}'],
    ['GET', '/walks/x', ''],
    ['GET', '/walks/x/report', ''],
    ['DELETE', '/walks/x', ''],
    ['GET', '/deliveries', ''],
    ['POST', '/deliveries/x/resend', ''],
  ])(
    'refuses %s %s unsigned, or signed over something else, before it looks at anything',
    async (method, path, body) => {
      const { webhook, clock } = testSite(openSettings);
      const headers = { 'content-type': 'application/json' };
      const init = { method, headers, ...(body === '' ? {} : { body }) };
      expect((await webhook.fetch(new Request(`${publicUrl}${path}`, init))).status).toBe(401);
      expect((await webhook.fetch(signedByPeer(method, path, body, clock.now, `${body}x`))).status).toBe(401);
      const old = new Date(clock.now.getTime() - 400_000);
      const signed = body === '' ? `${method} ${path}` : body;
      expect((await webhook.fetch(signedByPeer(method, path, body, old, signed))).status).toBe(401);
      expect((await webhook.fetch(signedByPeer(method, path, body, clock.now, signed))).status).not.toBe(401);
    },
  );

  it('takes a signature without a body for its own address and method only', async () => {
    const { webhook, clock } = testSite(openSettings);
    const get = (method: string, path: string) => signedByPeer(method, path, '', clock.now, 'GET /walks/x');
    expect((await webhook.fetch(get('GET', '/walks/x'))).status).toBe(404);
    expect((await webhook.fetch(get('GET', '/walks/y'))).status).toBe(401);
    expect((await webhook.fetch(get('DELETE', '/walks/x'))).status).toBe(401);
  });
});

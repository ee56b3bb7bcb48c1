import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openSettings, testSite } from './test-site.ts';

/** Requests as they came in, one file each: the request, a line of dashes, then what the response says. */
const folder = 'tests/fixtures/webhook';
const names = readdirSync(folder).filter((name) => name.endsWith('.http'));

interface Recorded {
  readonly request: Request;
  readonly status: number;
  readonly type: string;
  readonly says: readonly string[];
}

function readRecorded(text: string): Recorded {
  const [sent = '', answer = ''] = text.split('\n-----\n');
  const [head = '', ...bodies] = sent.split('\n\n');
  const [first = '', ...headerLines] = head.split('\n');
  const [method = '', path = ''] = first.split(' ');
  const headers = headerLines.map((line) => {
    const at = line.indexOf(': ');
    return [line.slice(0, at), line.slice(at + 2)] as [string, string];
  });
  const [status = '', type = '', ...says] = answer.trimEnd().split('\n');
  const body = bodies.join('\n\n').replace(/\n$/u, '');
  const init = { method, headers, ...(body === '' ? {} : { body }) };
  return { request: new Request(`http://10.0.0.7${path}`, init), status: Number(status), type, says };
}

describe('recorded requests', () => {
  it('are there for every channel', () => {
    for (const channel of ['json', 'sms', 'telegram'])
      expect(names.filter((name) => name.startsWith(channel)).length).toBeGreaterThanOrEqual(2);
  });

  it.each(names)('%s is answered as it was', async (name) => {
    const { request, status, type, says } = readRecorded(readFileSync(join(folder, name), 'utf8'));
    const site = testSite(openSettings);
    // The time at which they were recorded and signed.
    site.clock.now = new Date('2026-06-12T16:00:00Z');
    const response = await site.webhook.fetch(request);
    expect(response.status).toBe(status);
    expect(response.headers.get('content-type')?.split(';')[0] ?? '').toBe(type);
    const text = await response.text();
    for (const one of says) expect(text).toContain(one);
  });
});

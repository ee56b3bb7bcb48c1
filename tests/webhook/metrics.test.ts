import { describe, expect, it } from 'vitest';
import { createMetrics } from '../../src/webhook/metrics.ts';
import { routeOf } from '../../src/webhook/route-of.ts';
import { jsonRequest, openSettings, testSite } from './test-site.ts';

/** The text format 0.0.4 of Prometheus: comments, or a name, labels and a number. */
const line =
  /^(?:# (?:HELP|TYPE) [a-z_]+ .+|[a-z_]+(?:\{(?:[a-z]+="(?:[^"\\\n]|\\.)*",?)+\})? (?:[0-9.e+-]+|\+Inf))$/u;

describe('the metrics', () => {
  it('count requests, turns and emergencies in the text format of Prometheus', async () => {
    const { webhook } = testSite();
    await webhook.fetch(jsonRequest('POST', '/walks', {}));
    await webhook.fetch(jsonRequest('POST', '/walks', { text: 'there is a fire coming' }));
    await webhook.fetch(jsonRequest('GET', '/walks/nobody'));
    const text = await (await webhook.fetch(jsonRequest('GET', '/metrics'))).text();
    expect(
      text
        .trimEnd()
        .split('\n')
        .filter((one) => !line.test(one)),
    ).toEqual([]);
    expect(text).toContain('roofdown_requests_total{route="/walks",status="201"} 2');
    expect(text).toContain('roofdown_requests_total{route="/walks/:id",status="404"} 1');
    expect(text).toContain('roofdown_turns_total{channel="json",phase="asking"} 1');
    expect(text).toContain('roofdown_emergencies_total{channel="json"} 1');
    expect(text).toContain('roofdown_request_seconds_count{route="/walks"} 2');
    expect(text).toContain('roofdown_in_flight 1');
  });

  it('sort times into buckets that add up', () => {
    const metrics = createMetrics();
    for (const seconds of [0.0004, 0.003, 0.2, 60]) metrics.time('/sms', seconds);
    const text = metrics.text();
    expect(text).toContain('_bucket{route="/sms",le="0.001"} 1');
    expect(text).toContain('_bucket{route="/sms",le="0.005"} 2');
    expect(text).toContain('_bucket{route="/sms",le="0.25"} 3');
    expect(text).toContain('_bucket{route="/sms",le="5"} 3');
    expect(text).toContain('_bucket{route="/sms",le="+Inf"} 4');
  });

  it('are for whoever has the token, and for nobody while there is a public address without one', async () => {
    const status = async (env: Record<string, string>, authorization = '') =>
      (await testSite(env).webhook.fetch(jsonRequest('GET', '/metrics', undefined, { authorization })))
        .status;
    const token = 'token-of-the-metrics';
    expect(await status({})).toBe(200);
    expect(await status(openSettings)).toBe(404);
    expect(await status({ ...openSettings, ROOFDOWN_METRICS_TOKEN: token })).toBe(404);
    expect(await status({ ...openSettings, ROOFDOWN_METRICS_TOKEN: token }, `Bearer ${token}`)).toBe(200);
  });

  it('know routes from a closed list only', () => {
    expect(
      ['/walks/a', '/walks/a/messages', '/r/x', '/sms', '/a/b', '/walks/a/b/c', '/%0a'].map(routeOf),
    ).toEqual(['/walks/:id', '/walks/:id/messages', '/r/:token', '/sms', 'other', 'other', 'other']);
  });
});

describe('health', () => {
  it('is good while the program runs, ready while the store can be used', async () => {
    const site = testSite();
    const status = async (path: string) => (await site.webhook.fetch(jsonRequest('GET', path))).status;
    expect([await status('/healthz'), await status('/readyz')]).toEqual([200, 200]);
    Object.assign(site.store, { ping: () => Promise.reject(new Error('away')) });
    expect([await status('/healthz'), await status('/readyz')]).toEqual([200, 503]);
  });
});

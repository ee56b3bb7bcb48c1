import type { Delivery, DeliveryOutcome } from '../../conversation/ports.ts';
import { describeError } from '../answer-message.ts';
import type { Metrics } from '../metrics.ts';
import type { Site } from '../site.ts';
import { headersFor } from '../standard-webhooks.ts';
import { nextAttempt } from './backoff.ts';

/** Where finished walks go, and how they are sent. */
export interface DeliverTo {
  readonly url: string;
  readonly key: Uint8Array;
  /** Sends a request without following redirects; gives the status. Rejects when nothing was answered in time. */
  readonly send: (url: string, headers: Record<string, string>, body: string) => Promise<number>;
}

/** How long an attempt may take before another process may try; longer than `send` waits. */
const leaseSeconds = 60;

/** What is sent: the event, the walk, and its report as it stands. */
function bodyOf(site: Site, delivery: Delivery, report: string): string {
  const { walk, revision } = delivery;
  const data = { walk, revision, report: JSON.parse(report) as unknown };
  return JSON.stringify({ type: 'walk.finished', timestamp: delivery.at, version: site.version, data });
}

async function attempt(site: Site, to: DeliverTo, delivery: Delivery): Promise<number | 'gone'> {
  const record = await site.shell.store.load(delivery.walk);
  if (!record) return 'gone';
  const body = bodyOf(site, delivery, site.makeReport(record, 'json'));
  const headers = {
    'content-type': 'application/json',
    ...headersFor(to.key, delivery.id, site.shell.clock(), body),
  };
  return to.send(to.url, headers, body);
}

function outcomeOf(delivery: Delivery, problem: string, now: Date, final: boolean): DeliveryOutcome {
  const next = final ? undefined : nextAttempt(delivery.attempts + 1, now);
  return next ? { state: 'waiting', dueAt: next.toISOString(), problem } : { state: 'dead', problem };
}

async function deliverOne(site: Site, to: DeliverTo, delivery: Delivery): Promise<DeliveryOutcome> {
  const { clock } = site.shell;
  try {
    const status = await attempt(site, to, delivery);
    if (status === 'gone') return { state: 'dead', problem: 'the walk is gone' };
    if (status >= 200 && status < 300) return { state: 'sent' };
    // 410 means that the receiver wants no more (Standard Webhooks).
    return outcomeOf(delivery, `answered ${status}`, clock(), status === 410);
  } catch (error) {
    const { error: name, code } = describeError(error);
    return outcomeOf(delivery, `no answer (${code ?? name})`, clock(), false);
  }
}

/** Sends what is due, each by one process only; gives how many were tried. */
export async function deliverDue(site: Site, to: DeliverTo, metrics: Metrics): Promise<number> {
  const { store, clock } = site.shell;
  let tried = 0;
  for (const delivery of await store.deliveries.due(clock().toISOString(), 20)) {
    const until = new Date(clock().getTime() + leaseSeconds * 1000).toISOString();
    if (!(await store.deliveries.claim(delivery, until))) continue;
    tried += 1;
    const outcome = await deliverOne(site, to, delivery);
    await store.deliveries.settle(delivery.id, outcome);
    metrics.count('roofdown_deliveries_total', {
      outcome: outcome.state === 'waiting' ? 'failed' : outcome.state,
    });
    if (outcome.state !== 'sent')
      site.log({
        level: 'warn',
        what: 'not delivered',
        problem: outcome.problem,
        attempts: delivery.attempts + 1,
      });
  }
  return tried;
}

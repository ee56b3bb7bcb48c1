import { buildSite } from '../../src/commands/serve/build-site.ts';
import { readServeSettings } from '../../src/commands/serve/read-settings.ts';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { Programme } from '../../src/conversation/programme.ts';
import { createMemoryStore } from '../../src/storage/memory/memory-store.ts';
import { createWebhook, type Webhook } from '../../src/webhook/create-webhook.ts';
import type { LogLine, Site } from '../../src/webhook/site.ts';
import { realProgramme } from '../support/programme.ts';

/** The secret of the examples of the Standard Webhooks specification. */
export const exampleSecret = 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw';
export const smsToken = 'token-of-the-carrier-1';
export const telegramSecret = 'secret-of-the-chat-1';
export const publicUrl = 'https://walks.example.org';
export const siteKey = Buffer.alloc(32, 7).toString('base64');

/** Settings of a server on the open network with every channel. */
export const openSettings = {
  ROOFDOWN_KEY: siteKey,
  ROOFDOWN_SECRET: exampleSecret,
  ROOFDOWN_PUBLIC_URL: publicUrl,
  ROOFDOWN_SMS_TOKEN: smsToken,
  ROOFDOWN_TELEGRAM_SECRET: telegramSecret,
} as const;

export interface TestSite {
  readonly webhook: Webhook;
  readonly site: Site;
  readonly store: ServerStore;
  readonly lines: LogLine[];
  /** The time here; the tests move it. */
  readonly clock: { now: Date };
}

/** The webhook with the real flow, over a store, with no server and no network. */
export function testSite(
  env: Readonly<Record<string, string>> = {},
  parts: { store?: ServerStore; programme?: Programme } = {},
): TestSite {
  const store = parts.store ?? createMemoryStore();
  const lines: LogLine[] = [];
  const clock = { now: new Date('2026-06-12T16:00:00Z') };
  const site = buildSite(readServeSettings({ ROOFDOWN_MESSAGES_PER_MINUTE: '100000', ...env }), {
    programme: parts.programme ?? realProgramme(),
    store,
    clock: () => clock.now,
    log: (line) => lines.push(line),
    ready: () => true,
  });
  return { webhook: createWebhook(site), site, store, lines, clock };
}

/** A JSON request to a server without a secret. */
export function jsonRequest(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Request {
  return new Request(`http://127.0.0.1${path}`, {
    method,
    headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
}

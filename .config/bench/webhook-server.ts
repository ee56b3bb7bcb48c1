// A server for the measurement: `ours`, the webhook itself, or `bare`, a hono handler that reads the same JSON, checks
// the same signature and makes the same three writes in the same store, without a conversation.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { buildSite } from '../../src/commands/serve/build-site.ts';
import { readServeSettings } from '../../src/commands/serve/read-settings.ts';
import type { ServerStore } from '../../src/conversation/ports.ts';
import { buildProgramme } from '../../src/conversation/programme.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { handleMessage } from '../../src/conversation/shell.ts';
import type { Flow } from '../../src/flow/flow.ts';
import { createPostgresStore } from '../../src/storage/postgres/postgres-store.ts';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { createWebhook } from '../../src/webhook/create-webhook.ts';
import { seenId } from '../../src/webhook/keyed-hash.ts';
import { verify } from '../../src/webhook/standard-webhooks.ts';

const [kind, where = '', flowFile = '', secret = ''] = process.argv.slice(2);
const programme = buildProgramme(JSON.parse(readFileSync(flowFile, 'utf8')) as Flow);
const store: ServerStore = where.startsWith('postgres')
  ? await createPostgresStore({ url: where })
  : createSqliteStore({ file: where });
const settings = readServeSettings({
  ROOFDOWN_SECRET: secret,
  ROOFDOWN_KEY: Buffer.alloc(32, 7).toString('base64'),
  ROOFDOWN_MESSAGES_PER_MINUTE: '100000',
});
const clock = () => new Date();
const site = buildSite(settings, { programme, store, clock, log: () => undefined, ready: () => true });

/** A walk half done and a reply of its size, made once. */
async function sample() {
  const walk = 'sample' as WalkId;
  let kept = await handleMessage(site.shell, walk, { kind: 'hello' });
  for (let turn = 0; turn < 25; turn += 1)
    kept = await handleMessage(site.shell, walk, { kind: 'text', text: turn === 0 ? 'no' : 'not sure' });
  return kept;
}

async function bare() {
  const { record, reply } = await sample();
  const body = JSON.stringify(reply);
  const revisions = new Map<string, number>();
  const app = new Hono();
  app.post('/walks/:id/messages', async (c) => {
    const raw = await c.req.text();
    const header = (name: string) => c.req.header(name);
    const headers = { id: header('webhook-id'), timestamp: header('webhook-timestamp'), signature: header('webhook-signature') };
    const verified = verify(settings.ROOFDOWN_SECRET ?? new Uint8Array(), headers, raw, clock());
    if ('problem' in verified) return c.text('', 401);
    JSON.parse(raw);
    const id = c.req.param('id') as WalkId;
    const expected = revisions.get(id) ?? 'new';
    const revision = (revisions.get(id) ?? 0) + 1;
    revisions.set(id, revision);
    const message = { channel: 'bare', id: seenId(id, verified.id), reply };
    await store.commit({ record: { ...record, id, revision }, expected, message });
    return c.body(body, 200, { 'content-type': 'application/json' });
  });
  return app.fetch;
}

// Processor time since the last time it was asked: says more than the clock on a machine that does other things too.
let before = process.cpuUsage();
process.on('SIGUSR2', () => {
  const { user, system } = process.cpuUsage(before);
  before = process.cpuUsage();
  process.stdout.write(`cpu ${(user + system) / 1000}\n`);
});

const webhook = createWebhook(site);
const answer = kind === 'bare' ? await bare() : (request: Request) => webhook.fetch(request);
const server = createServer(getRequestListener((request) => answer(request)));
server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  process.stdout.write(`port ${typeof address === 'object' && address ? address.port : 0}\n`);
});

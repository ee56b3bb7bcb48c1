import { Hono } from 'hono';
import type * as z from 'zod';
import type { WalkId } from '../../conversation/record.ts';
import type { Desk, Incoming } from '../answer-message.ts';
import { walkOfStart } from '../keyed-hash.ts';
import { HttpProblem } from '../problem.ts';
import { loadWalk, reportResponse } from '../report-response.ts';
import { parseBody, readSigned } from './read-request.ts';
import { MessageBody, StartBody } from './schemas.ts';
import { placeBody, replyBody } from './to-body.ts';
import { toMessage } from './to-message.ts';

/** What the server knows of a connection. */
export interface Connection {
  readonly Bindings: { readonly remoteAddress?: string };
}

const noStore = { 'cache-control': 'no-store' };

async function answerJson({ site, answer }: Desk, incoming: Incoming, status: 200 | 201): Promise<Response> {
  const answered = await answer(incoming);
  if (answered.kind === 'unknown') throw new HttpProblem('unknown-walk');
  if (answered.kind === 'limited') throw new HttpProblem('too-many', undefined, { 'retry-after': '60' });
  if (answered.kind === 'trouble') throw new HttpProblem('unavailable', undefined, { 'retry-after': '2' });
  const body = replyBody(site, answered.record, answered.reply);
  const headers = { ...noStore, ...(status === 201 ? { location: `/walks/${incoming.walk}` } : {}) };
  return Response.json(body, { status, headers });
}

const startReader = ({ text: _, ...reader }: z.infer<typeof StartBody>) => reader;

/** The generic JSON channel: start, message, place, report, delete. */
export function jsonChannel(desk: Desk): Hono<Connection> {
  const { site } = desk;
  const app = new Hono<Connection>();

  app.post('/walks', async (c) => {
    const { messageId, body } = await readSigned(site, c.req.raw);
    const start = parseBody(c.req.raw, body, StartBody);
    // A start that is signed comes from a known system; the others are limited by where they come from.
    const open = site.settings.jsonKey !== undefined || desk.mayStart(c.env?.remoteAddress ?? '');
    const message =
      start.text === undefined ? ({ kind: 'hello' } as const) : ({ kind: 'text', text: start.text } as const);
    const walk = walkOfStart(site.settings.key, messageId);
    if (!open) throw new HttpProblem('too-many', undefined, { 'retry-after': '60' });
    return answerJson(desk, { channel: 'json', walk, message, messageId, reader: startReader(start) }, 201);
  });

  app.post('/walks/:id/messages', async (c) => {
    const { messageId, body } = await readSigned(site, c.req.raw);
    const message = toMessage(parseBody(c.req.raw, body, MessageBody));
    const walk = c.req.param('id') as WalkId;
    return answerJson(desk, { channel: 'json', walk, message, messageId, onlyKnown: true }, 200);
  });

  app.get('/walks/:id', async (c) => {
    await readSigned(site, c.req.raw);
    return Response.json(placeBody(site, await loadWalk(site, c.req.param('id'))), { headers: noStore });
  });

  app.get('/walks/:id/report', async (c) => {
    await readSigned(site, c.req.raw);
    const record = await loadWalk(site, c.req.param('id'));
    const wanted = {
      format: c.req.query('format'),
      accept: c.req.header('accept'),
      otherwise: 'json',
    } as const;
    return reportResponse(site, record, wanted);
  });

  app.delete('/walks/:id', async (c) => {
    await readSigned(site, c.req.raw);
    const removed = await site.shell.store.remove(c.req.param('id') as WalkId);
    if (!removed) throw new HttpProblem('unknown-walk');
    return new Response(null, { status: 204 });
  });

  return app;
}

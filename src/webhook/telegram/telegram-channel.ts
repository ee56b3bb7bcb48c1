import { Hono } from 'hono';
import { newWalk } from '../../conversation/new-walk.ts';
import type { Desk } from '../answer-message.ts';
import type { Connection } from '../json/json-channel.ts';
import { parseBody } from '../json/read-request.ts';
import { walkOfPerson } from '../keyed-hash.ts';
import { HttpProblem } from '../problem.ts';
import { sameText } from '../same-text.ts';
import { chatMessage } from './chat-message.ts';
import { fromUpdate } from './to-message.ts';
import { Update } from './update.ts';

const nothing = () => new Response(null, { status: 200 });

/** Telegram: a secret in a header, buttons for choices, the reply in the body of the response. */
export function telegramChannel(desk: Desk, secret: string): Hono<Connection> {
  const { site } = desk;
  const { shell, settings } = site;
  const app = new Hono<Connection>();
  app.post('/telegram', async (c) => {
    if (!sameText(c.req.header('x-telegram-bot-api-secret-token') ?? '', secret))
      throw new HttpProblem('not-signed');
    const update = parseBody(c.req.raw, await c.req.text(), Update);
    const from = fromUpdate(update);
    if (from.kind === 'nothing') return nothing();
    const walk = walkOfPerson(settings.key, 'telegram', String(from.chat));
    if (from.kind === 'notice') {
      const text = site.wordingFor(newWalk(shell.programme, walk, shell.clock())).text(from.phrase);
      return Response.json({ method: 'sendMessage', chat_id: from.chat, text });
    }
    const { message } = from;
    const answered = await desk.answer({
      channel: 'telegram',
      walk,
      message,
      messageId: String(update.update_id),
    });
    if (answered.kind === 'limited') throw new HttpProblem('too-many', undefined, { 'retry-after': '30' });
    // Telegram sends an update again until it is taken, so nothing is lost.
    if (answered.kind === 'trouble') throw new HttpProblem('unavailable', undefined, { 'retry-after': '2' });
    if (answered.kind === 'unknown') return nothing();
    const reply = chatMessage(site, answered.record, answered.reply, from.chat);
    return reply ? Response.json(reply) : nothing();
  });
  return app;
}

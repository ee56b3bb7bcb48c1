import { Hono } from 'hono';
import { splitSms } from '../../wording/sms-parts.ts';
import type { Answered, Desk } from '../answer-message.ts';
import type { Connection } from '../json/json-channel.ts';
import { walkOfPerson } from '../keyed-hash.ts';
import { HttpProblem } from '../problem.ts';
import { messageOfSms } from './carrier-word.ts';
import { isSignedForm } from './form-signature.ts';
import { messageXml } from './message-xml.ts';
import { smsText } from './sms-text.ts';

/** The fields of a form post that are read; carriers send more. */
interface SmsPost {
  readonly from: string;
  readonly body: string;
  readonly id: string;
}

function readPost(fields: URLSearchParams): SmsPost {
  const [from, id] = [fields.get('From'), fields.get('MessageSid')];
  if (!from || !id) throw new HttpProblem('not-valid', 'From and MessageSid are needed.');
  return { from, id: id.slice(0, 256), body: fields.get('Body') ?? '' };
}

/** One spelling for a number, so that one person has one walk. */
const normalNumber = (number: string) => number.replace(/[^\d+a-z]/giu, '').toLowerCase();

function textOf({ site }: Desk, answered: Answered): string {
  switch (answered.kind) {
    case 'answered':
      return smsText(site, answered.record, answered.reply);
    case 'limited':
      return answered.limited === 'first' ? site.wordingFor(answered.blank).text('webhook.slow-down') : '';
    case 'trouble':
      return site.wordingFor(answered.blank).text('webhook.trouble');
    case 'unknown':
      return '';
  }
}

/** Text messages: a signed form post, answered with message XML; every part at whole words. */
export function smsChannel(desk: Desk, token: string): Hono<Connection> {
  const { settings } = desk.site;
  const app = new Hono<Connection>();
  app.post('/sms', async (c) => {
    if (
      c.req.header('content-type')?.split(';')[0]?.trim().toLowerCase() !==
      'application/x-www-form-urlencoded'
    )
      throw new HttpProblem('wrong-media-type', 'Send a form.');
    const fields = new URLSearchParams(await c.req.text());
    // The address as the carrier knows it, never as the request says it.
    const url = `${settings.publicUrl ?? ''}/sms${new URL(c.req.url).search}`;
    if (!isSignedForm(token, url, fields, c.req.header(settings.smsSignatureHeader)))
      throw new HttpProblem('not-signed');
    const { from, id, body } = readPost(fields);
    const walk = walkOfPerson(settings.key, 'sms', normalNumber(from));
    const answered = await desk.answer({ channel: 'sms', walk, message: messageOfSms(body), messageId: id });
    const text = textOf(desk, answered);
    const xml = messageXml(text === '' ? [] : splitSms(text));
    return new Response(xml, {
      headers: { 'content-type': 'text/xml; charset=utf-8', 'cache-control': 'no-store' },
    });
  });
  return app;
}

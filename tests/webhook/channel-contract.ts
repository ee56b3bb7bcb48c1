import type { Message, Part, Reply } from '../../src/conversation/message.ts';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { handleMessage } from '../../src/conversation/shell.ts';
import { createMemoryStore } from '../../src/storage/memory/memory-store.ts';
import { signForm } from '../../src/webhook/sms/form-signature.ts';
import { sign } from '../../src/webhook/standard-webhooks.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { openSettings, publicUrl, smsToken, type TestSite, telegramSecret, testSite } from './test-site.ts';

/** Every way to hold the conversation: the plain terminal and the channels of the webhook. */
export const channels = ['plain', 'json', 'sms', 'telegram'] as const;
export type Channel = (typeof channels)[number];

/** A conversation on a channel as a person has it: they arrive, then type lines. */
export interface Talk extends TestSite {
  readonly arrive: () => Promise<string>;
  readonly type: (line: string) => Promise<string>;
  /** A press on a button that an earlier reply showed. */
  readonly press: (choice: Message & { kind: 'choose' }) => Promise<string>;
  /** The last request once more, to the letter. */
  readonly repeat: () => Promise<string>;
  /** The reply data of every turn so far. */
  readonly replies: readonly Reply[];
}

type Send = (message: Message, id: number) => Promise<string>;

/** Words that carriers reserve on text messages; a person there says the other word for the same. */
const otherWords: Readonly<Record<string, string>> = {
  stop: 'pause',
  quit: 'pause',
  end: 'pause',
  cancel: 'pause',
};

/** Keeps the reply data that a store is given. */
function recording(store: ServerStore, replies: Reply[]): ServerStore {
  return {
    ...store,
    commit: async (turn) => {
      const kept = await store.commit(turn);
      if (kept === 'saved' && turn.message) replies.push(turn.message.reply);
      return kept;
    },
  };
}

function sendPlain({ site }: TestSite, replies: Reply[]): Send {
  return async (message) => {
    const { record, reply } = await handleMessage(site.shell, 'plain' as WalkId, message);
    replies.push(reply);
    const { blocks, ask } = wordReply(reply, site.wordingFor(record));
    return [...blocks.flatMap((block) => block.lines), ask?.question ?? ''].join('\n');
  };
}

/** A request signed as by a system that has the secret. */
export function signedRequest({ site, clock }: TestSite, path: string, id: string, body: string): Request {
  const timestamp = Math.floor(clock.now.getTime() / 1000);
  return new Request(`${publicUrl}${path}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'webhook-id': id,
      'webhook-timestamp': String(timestamp),
      'webhook-signature': sign(site.settings.jsonKey ?? new Uint8Array(), id, timestamp, body),
    },
    body,
  });
}

function sendJson(site: TestSite): Send {
  let walk = '';
  return async (message, id) => {
    const said = message.kind === 'text' ? { text: message.text } : undefined;
    const { kind: _, ...choose } = message;
    const body = walk === '' ? {} : (said ?? (message.kind === 'choose' ? { choose } : { hello: true }));
    const path = walk === '' ? '/walks' : `/walks/${walk}/messages`;
    const response = await site.webhook.fetch(signedRequest(site, path, `m${id}`, JSON.stringify(body)));
    const reply = (await response.json()) as { walk?: string };
    if (response.status >= 300) throw new Error(JSON.stringify(reply));
    walk = reply.walk ?? walk;
    return JSON.stringify(reply);
  };
}

/** A form post as a carrier sends it. */
export function smsRequest(fields: Readonly<Record<string, string>>, token = smsToken): Request {
  const form = new URLSearchParams(fields);
  return new Request('http://10.0.0.7/sms', {
    method: 'POST',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      'x-sms-signature': signForm(token, `${publicUrl}/sms`, form),
    },
    body: form.toString(),
  });
}

/** A number from the range that is kept for fiction. */
export const phone = '+15555550142';

function sendSms({ webhook }: TestSite): Send {
  return async (message, id) => {
    const text = message.kind === 'text' ? message.text : 'START';
    const spoken = otherWords[text.trim().toLowerCase()] ?? text;
    const response = await webhook.fetch(smsRequest({ From: phone, Body: spoken, MessageSid: `SM${id}` }));
    const xml = await response.text();
    if (response.status >= 300) throw new Error(xml);
    return xml;
  };
}

/** An update as the chat service sends it. */
export function telegramRequest(update: unknown, secret = telegramSecret): Request {
  return new Request('http://10.0.0.7/telegram', {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-telegram-bot-api-secret-token': secret },
    body: JSON.stringify(update),
  });
}

function updateOf(message: Message, id: number): object {
  const chat = { id: 4242, type: 'private' };
  if (message.kind === 'choose') {
    const data = `${message.revision} ${message.key} ${message.option}`;
    return { update_id: id, callback_query: { id: '1', from: chat, message: { message_id: 1, chat }, data } };
  }
  const text = message.kind === 'text' ? message.text : '/start';
  return { update_id: id, message: { message_id: id, from: chat, chat, date: 1, text } };
}

function sendTelegram({ webhook }: TestSite): Send {
  return async (message, id) => {
    const response = await webhook.fetch(telegramRequest(updateOf(message, id)));
    if (response.status >= 300) throw new Error(await response.text());
    return response.text();
  };
}

/** Begins a conversation on a channel over a store; nobody has arrived yet. */
export function talkOn(channel: Channel, store: ServerStore = createMemoryStore()): Talk {
  const replies: Reply[] = [];
  const site = testSite(openSettings, { store: channel === 'plain' ? store : recording(store, replies) });
  const senders = { plain: sendPlain, json: sendJson, sms: sendSms, telegram: sendTelegram };
  const send = senders[channel](site, replies);
  let count = 0;
  let last: Message = { kind: 'hello' };
  const next = (message: Message) => {
    last = message;
    count += 1;
    return send(message, count);
  };
  return {
    ...site,
    replies,
    arrive: () => next({ kind: 'hello' }),
    type: (line) => next({ kind: 'text', text: line }),
    press: next,
    repeat: () => send(last, count),
  };
}

/** Holds a whole conversation on a channel: the reply data of every turn, the greeting first. */
export async function drive(channel: Channel, lines: readonly string[]): Promise<readonly Reply[]> {
  const talk = talkOn(channel);
  await talk.arrive();
  for (const line of lines) await talk.type(line);
  return talk.replies;
}

const isCarriers = (part: Part) => part.kind === 'say' && part.text.startsWith('carrier.');

/** Reply data without what only a carrier makes a channel say, so that channels can be compared. */
export function comparable(replies: readonly Reply[]): readonly Reply[] {
  return replies.map((reply) => ({ ...reply, parts: reply.parts.filter((part) => !isCarriers(part)) }));
}

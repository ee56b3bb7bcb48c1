import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import { wrapText } from '../../src/terminal/wrap-text.ts';
import { smsRequest } from '../webhook/channel-contract.ts';
import { exampleSecret, openSettings, type TestSite, testSite } from '../webhook/test-site.ts';
import { runCommand } from './run-command.ts';

/** A call and what the caller then wrote by text message: words, and what was typed in each of the two blocks. */
export interface HandedOver {
  readonly words: readonly [string, string];
  readonly command: readonly string[];
  readonly called: readonly string[];
  readonly texted: readonly string[];
}

/** The address of the chat service as a transcript shows it. */
const address = 'http://127.0.0.1:8080';
const texts = '$ text messages';
const walkId = '3f2a51c8-6d0e-4b7a-9c11-5a2e8d94b076';
const columns = 79;

/** Reads a transcript of two blocks fenced by ```text and ```: the call, then the text messages. */
export function readHandedOver(text: string): HandedOver {
  const [before = '', call = '', between = '', chat = ''] = text.split(/```(?:text)?\n/);
  const [first = ''] = call.split('\n');
  if (!first.startsWith('$ roofdown call') || !chat.startsWith(texts))
    throw new Error(`Two blocks are needed: "$ roofdown call ..." and "${texts}".`);
  const typedIn = (block: string) =>
    block
      .split('\n')
      .filter((line) => line.startsWith('> '))
      .map((line) => line.slice(2));
  return {
    words: [before, between],
    command: first.split(' ').slice(2),
    called: typedIn(call),
    texted: typedIn(chat),
  };
}

async function listening({ webhook }: TestSite): Promise<Server> {
  const server = createServer(getRequestListener((request) => webhook.fetch(request)));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

const trimmed = (text: string) =>
  text
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')
    .trim();

const unescaped = (xml: string) =>
  xml.replace(
    /&(lt|gt|quot|apos|amp);/g,
    (_, name: string) => ({ lt: '<', gt: '>', quot: '"', apos: "'" })[name] ?? '&',
  );

/** What a phone shows: each message on its own. */
async function text({ webhook }: TestSite, line: string, number: number): Promise<string> {
  const fields = { From: '+15555550142', Body: line, MessageSid: `SM${number}` };
  const xml = await (await webhook.fetch(smsRequest(fields))).text();
  const messages = [...xml.matchAll(/<Message>([\s\S]*?)<\/Message>/g)].map(([, one = '']) => unescaped(one));
  const lines = messages.map((one) => one.split('\n').flatMap((part) => wrapText(part, columns)));
  return [`> ${line}`, ...lines.map((one) => one.join('\n'))].join('\n\n');
}

/** The call with the chat service at this port in place of the one that the transcript names. */
async function call({ command, called }: HandedOver, port: number): Promise<string> {
  const argv = command.map((one) => (one === address ? `http://127.0.0.1:${port}` : one));
  const { out, err } = await runCommand(argv, called, undefined, () => walkId, {
    ROOFDOWN_SECRET: exampleSecret,
  });
  return trimmed(`${out}${err}`.replaceAll(`127.0.0.1:${port}`, '127.0.0.1:8080'));
}

/** Runs it again: the whole file as the program says it today. */
export async function runHandedOver(transcript: HandedOver): Promise<string> {
  const site = testSite({ ...openSettings, ROOFDOWN_REACH: 'to 555-0160 as a text message' });
  const server = await listening(site);
  try {
    const said = await call(transcript, (server.address() as AddressInfo).port);
    const chat: string[] = [];
    for (const [number, line] of transcript.texted.entries()) chat.push(await text(site, line, number));
    const [before, between] = transcript.words;
    const command = ['$ roofdown', ...transcript.command].join(' ');
    const blocks = [`${command}\n\n${said}`, [texts, ...chat].join('\n\n')];
    return `${before}\`\`\`text\n${blocks[0]}\n\`\`\`\n${between}\`\`\`text\n${blocks[1]}\n\`\`\`\n`;
  } finally {
    server.close();
  }
}

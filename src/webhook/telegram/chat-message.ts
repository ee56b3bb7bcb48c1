import type { Reply } from '../../conversation/message.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { wordReply } from '../../wording/word-reply.ts';
import type { WordedAsk, WordedBlock } from '../../wording/worded.ts';
import type { Wording } from '../../wording/wording.ts';
import { choiceLine } from '../choice-line.ts';
import { reportLink } from '../report-link.ts';
import type { Site } from '../site.ts';
import { type Button, buttonsOf, hasChoiceButtons } from './buttons.ts';

/** Most characters of a message. */
export const mostCharacters = 4096;

/** A method call as the body of the response: no call of ours goes out. */
export interface ChatMessage {
  readonly method: 'sendMessage';
  readonly chat_id: number;
  readonly text: string;
  readonly reply_markup?: { readonly inline_keyboard: readonly (readonly Button[])[] };
}

const paragraph = (block: WordedBlock) =>
  block.kind === 'readBack'
    ? block.lines.map((line, at) => (at === 0 ? line : `- ${line}`)).join('\n')
    : block.lines.join('\n');

function askText(ask: WordedAsk, withChoices: boolean): string {
  const choices = withChoices ? ask.choices.map(choiceLine) : [];
  const guide = ask.guide ? [ask.guide.listen, ask.guide.cannotTell] : [];
  return [ask.question, ...guide, ...choices, ...(ask.hint === '' ? [] : [ask.hint])].join('\n');
}

/** Cuts at a word, never within a character. */
function cutTo(text: string, most: number): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most - 2);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), cut.lastIndexOf('\n'), most / 2)).trimEnd()} …`;
}

/** What a volunteer copies and sends to the caller. */
function textToSend(site: Site, record: WalkRecord, wording: Wording): string {
  const { text, parts } = site.callText(record);
  return `\n${wording.text('call.closing.sms', { parts })}\n${text}`;
}

/** The report in a chat: the first jobs, and a link to all of it. */
function reportText(site: Site, record: WalkRecord, wording: Wording): string {
  const link = reportLink(site, record.id);
  const first = record.call ? [] : site.firstJobs(record, 5).map((one, at) => `${at + 1}. ${one}`);
  const links = link
    ? [wording.text('webhook.report-link', link), wording.text('webhook.report-link-until', link)]
    : [wording.text('webhook.no-link')];
  return [...first, ...links, ...(record.call ? [textToSend(site, record, wording)] : [])].join('\n');
}

/** Everything said, within the room: long lists of answers are a link, and the question is never cut away. */
function within(site: Site, record: WalkRecord, wording: Wording, reply: Reply, question: string): string {
  const { blocks } = wordReply(reply, wording);
  const textOf = (block: WordedBlock) =>
    block.kind === 'report' ? reportText(site, record, wording) : paragraph(block);
  const whole = [...blocks.map(textOf), question].filter((text) => text !== '').join('\n\n');
  if (whole.length <= mostCharacters) return whole;
  const link = reportLink(site, record.id);
  const instead = link ? [wording.text('webhook.answers-link', link)] : [];
  const kept = blocks.filter((block) => block.kind !== 'readBack').map(textOf);
  const end = [...instead, question].filter((text) => text !== '').join('\n\n');
  return [cutTo(kept.join('\n\n'), mostCharacters - end.length - 2), end].join('\n\n');
}

/** A reply for a chat; nothing when nothing is said. */
export function chatMessage(
  site: Site,
  record: WalkRecord,
  reply: Reply,
  chat: number,
): ChatMessage | undefined {
  const wording = site.wordingFor(record);
  const worded = wordReply({ parts: [], ...(reply.ask ? { ask: reply.ask } : {}) }, wording).ask;
  const labels = { notSure: wording.text('webhook.not-sure'), skip: wording.text('webhook.skip') };
  const rows = reply.ask && worded ? buttonsOf(reply.ask, worded, reply.revision, labels) : [];
  const question = worded && reply.ask ? askText(worded, !hasChoiceButtons(reply.ask, rows)) : '';
  const text = within(site, record, wording, reply, question);
  if (text === '') return undefined;
  return {
    method: 'sendMessage',
    chat_id: chat,
    text,
    ...(rows.length > 0 ? { reply_markup: { inline_keyboard: rows } } : {}),
  };
}

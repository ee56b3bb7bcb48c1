import { askOf } from '../../conversation/ask.ts';
import type { Ask, Progress, Reply } from '../../conversation/message.ts';
import { progressOf } from '../../conversation/progress.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { wordReply } from '../../wording/word-reply.ts';
import type { WordedAsk } from '../../wording/worded.ts';
import type { Wording } from '../../wording/wording.ts';
import { reportLink } from '../report-link.ts';
import type { Site } from '../site.ts';
import type { Place, ReplyBody } from './schemas.ts';

function askBody(ask: Ask | undefined, worded: WordedAsk | undefined): Place['ask'] {
  if (!ask || !worded) return null;
  return {
    key: ask.key,
    kind: ask.kind,
    question: worded.question,
    choices: [...worded.choices],
    several: worded.several,
    sides: [...ask.sides],
    hint: worded.hint,
    guide: worded.guide ?? null,
  };
}

function progressBody({ stop, stops, answered, asked }: Progress, wording: Wording): Place['progress'] {
  return {
    stop: stop ?? null,
    answered,
    asked,
    stops: stops.map(({ id, title, state }) => ({ id, title: wording.text(title), state })),
  };
}

/** Where a walk stands, without a turn. */
export function placeBody({ shell, wordingFor }: Site, record: WalkRecord): Place {
  const { checklist } = shell.programme;
  const wording = wordingFor(record);
  const ask = askOf(checklist, record);
  const { id, revision, cursor, startedAt, updatedAt } = record;
  return {
    walk: id,
    revision,
    phase: cursor.phase,
    ask: askBody(ask, wordReply({ parts: [], ...(ask ? { ask } : {}) }, wording).ask),
    progress: progressBody(progressOf(checklist, record), wording),
    startedAt,
    updatedAt,
  };
}

/** A reply in words and as data. */
export function replyBody(site: Site, record: WalkRecord, reply: Reply): ReplyBody {
  const wording = site.wordingFor(record);
  const { blocks, ask } = wordReply(reply, wording);
  const holdsReport = reply.parts.some((part) => part.kind === 'report');
  return {
    walk: record.id,
    revision: reply.revision,
    phase: reply.phase,
    ask: askBody(reply.ask, ask),
    progress: progressBody(reply.progress, wording),
    startedAt: record.startedAt,
    updatedAt: record.updatedAt,
    said: blocks.map(({ kind, tone, lines }) => ({ kind, tone, lines: [...lines] })),
    report: holdsReport ? (reportLink(site, record.id)?.link ?? null) : null,
    textToSend: holdsReport && record.call ? site.callText(record).text : null,
    reply: reply as unknown as Record<string, unknown>,
  };
}

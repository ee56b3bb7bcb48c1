import { isOpen, pathOf } from '../answers/path.ts';
import { advance } from './advance.ts';
import { askOf } from './ask.ts';
import { beginCall, guideCall, guidesInstead } from './call/guide-call.ts';
import { takeCarrierWord, takeWhileSilent } from './carrier-words.ts';
import { askSafe, stopForEmergency } from './emergency.ts';
import { greetingInstead } from './first-words.ts';
import { answersKept } from './flow-changed.ts';
import { type CodeMet, type Meeting, meetCode } from './hand-over/take-over.ts';
import type { HandOverTerms } from './hand-over/terms.ts';
import { hello } from './hello.ts';
import type { Message, Part, Reply } from './message.ts';
import type { Programme } from './programme.ts';
import { progressOf } from './progress.ts';
import { readFor } from './read.ts';
import { readBackParts } from './read-back.ts';
import type { WalkRecord } from './record.ts';
import { takeAnswer } from './take-answer.ts';
import { takeText } from './take-text.ts';
import { say, type Turned } from './turned.ts';

/** A press on a choice: for another question than the one asked now it changes that answer, and says so. */
function choose(programme: Programme, record: WalkRecord, message: Message & { kind: 'choose' }): Turned {
  const { checklist } = programme;
  const step = pathOf(checklist.index, record.sheet).byKey.get(message.key);
  if (!step || record.cursor.phase === 'emergency')
    return record.cursor.phase === 'emergency'
      ? askSafe(record)
      : { record, parts: [say('walk.late-unknown')] };
  const reading = readFor(checklist, record, step, message.option);
  if (reading.kind !== 'answer') return { record, parts: [say('walk.late-unknown')] };
  const late = record.cursor.key !== message.key;
  const turned = takeAnswer(programme, record, step, reading.answer, reading.note);
  if (!late) return turned;
  const values = { question: { text: `question/${step.question.id}/short` } };
  return { record: turned.record, parts: [say('walk.late-edit', values), ...turned.parts] };
}

/** Where a new record asks nothing yet, the machine is asked for the first question. */
function entered(programme: Programme, record: WalkRecord): WalkRecord {
  if (record.cursor.phase !== 'asking' || record.cursor.key !== undefined) return record;
  const first = pathOf(programme.checklist.index, record.sheet).steps.find((step) =>
    isOpen(step, record.sheet),
  );
  return first
    ? advance(programme, record, { type: 'GO', key: first.key })
    : advance(programme, record, { type: 'FINISH' });
}

/** Said on coming to another stop. */
function arrival(programme: Programme, before: WalkRecord, after: WalkRecord): Part[] {
  const { index } = programme.checklist;
  const stopAt = ({ cursor, sheet }: WalkRecord) =>
    cursor.key === undefined || cursor.phase !== 'asking'
      ? undefined
      : pathOf(index, sheet).byKey.get(cursor.key)?.question.stop;
  const stop = stopAt(after);
  if (stop === undefined || stop === stopAt(before) || after.cursor.pending) return [];
  const title = say(`stop/${stop}/title`, undefined, 'heading');
  // A caller goes where the question sends them.
  return after.call ? [title] : [title, say(`stop/${stop}/arrive`)];
}

function dispatch(programme: Programme, record: WalkRecord, message: Message): Turned {
  if (record.silent) return takeWhileSilent(programme, record, message);
  switch (message.kind) {
    case 'hello':
      return hello(programme, record);
    case 'text':
      return takeText(programme, record, message.text);
    case 'choose':
      return choose(programme, record, message);
    case 'emergency':
      return stopForEmergency(programme, record);
    case 'carrier':
      return takeCarrierWord(programme, record, message.word);
  }
}

/** Reaching the end by the last answer, the answers are read back. */
function atTheEnd(programme: Programme, before: WalkRecord, turned: Turned): Turned {
  const ended = before.cursor.phase === 'asking' && turned.record.cursor.phase === 'readBack';
  if (!ended || turned.parts.some((part) => part.kind === 'readBack')) return turned;
  return {
    record: turned.record,
    parts: [...turned.parts, ...readBackParts(programme.checklist, turned.record)],
  };
}

/** What a turn gives: the next record and the reply; with `erase`, the record is not to be kept, nor anything before it. */
export interface TurnTaken {
  readonly record: WalkRecord;
  readonly reply: Reply;
  readonly erase?: true;
  /** The key of the waiting walk that went into the record. */
  readonly takes?: string;
}

/** What the channel knows besides the message. */
export interface Around {
  /** How a call can be passed on; nothing: it cannot. */
  readonly handsOver?: HandOverTerms;
  /** The code in the message, with what it leads to. */
  readonly met?: CodeMet;
}

interface Begun {
  readonly record: WalkRecord;
  readonly message: Message;
  /** Said before everything else. */
  readonly parts: readonly Part[];
  readonly meeting?: Meeting;
}

/** The record and the message that a turn is about: a walk that was passed on goes on as if its person came back. */
function begin(programme: Programme, stored: WalkRecord, said: Message, now: Date, around: Around): Begun {
  const meeting = around.met && meetCode(programme, stored, said, around.met);
  const guides = !meeting && guidesInstead(programme, stored, said);
  const from: WalkRecord = guides ? { ...stored, audience: 'volunteer' } : (meeting?.record ?? stored);
  const comes = guides || meeting?.takes !== undefined;
  const { record: kept, parts: changed } = answersKept(programme, from);
  const message: Message = comes ? { kind: 'hello' } : said;
  const record = entered(programme, beginCall(programme, kept, message, now, around.handsOver));
  return {
    record,
    message: greetingInstead(programme, record, message),
    parts: [...(meeting?.parts ?? []), ...changed],
    ...(meeting ? { meeting } : {}),
  };
}

/** What the message does; a code that took nothing does nothing else, and whoever took a walk was greeted with it. */
function answer(programme: Programme, { record, message, meeting }: Begun): Turned {
  const greeted = meeting?.takes !== undefined && !record.call && record.cursor.phase === 'asking';
  if (greeted || (meeting && message.kind === 'text')) return { record, parts: [] };
  return atTheEnd(programme, record, dispatch(programme, record, message));
}

/**
 * One turn: pure and synchronous. Takes a record and a message, gives the next record and the reply to it.
 * The reply holds text ids and values, never finished sentences.
 */
export function takeTurn(
  programme: Programme,
  stored: WalkRecord,
  said: Message,
  now: Date,
  around: Around = {},
): TurnTaken {
  const begun = begin(programme, stored, said, now, around);
  const { record, message, meeting } = begun;
  const turned = guideCall(programme, record, answer(programme, begun), now);
  const arrived =
    message.kind === 'hello'
      ? arrival(programme, { ...record, cursor: { phase: 'asking' } }, turned.record)
      : arrival(programme, record, turned.record);
  const next: WalkRecord = { ...turned.record, revision: stored.revision + 1, updatedAt: now.toISOString() };
  const ask = turned.alone ? undefined : askOf(programme.checklist, next);
  const reply: Reply = {
    parts: [...begun.parts, ...turned.parts, ...arrived],
    ...(ask ? { ask } : {}),
    phase: next.cursor.phase,
    progress: progressOf(programme.checklist, next),
    revision: next.revision,
    ...(turned.handsOver ? { handsOver: turned.handsOver } : {}),
  };
  return {
    record: next,
    reply,
    ...(turned.erase ? { erase: true } : {}),
    ...(meeting?.takes === undefined ? {} : { takes: meeting.takes }),
  };
}

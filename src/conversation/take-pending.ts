import type { Reading } from '../answers/reading/reading.ts';
import { advance, withoutPending } from './advance.ts';
import { startAnew } from './call/guide-call.ts';
import { isPhrase } from './call/spoken-words.ts';
import { confirm } from './confirm.ts';
import { stopForEmergency } from './emergency.ts';
import { agreeToHandOver } from './hand-over/leave.ts';
import { withoutDone } from './mark-done.ts';
import type { Programme } from './programme.ts';
import { readClearly, readYesNo } from './read-yes-no.ts';
import type { Pending, WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';
import { wordsOf } from './words-of.ts';

/** What is left after erasing is only for this reply: it is not kept. */
function forget(record: WalkRecord): Turned {
  const { units: _, silent: __, call, ...rest } = record;
  const blank: WalkRecord = { ...rest, sheet: {}, cursor: { phase: 'paused' }, notes: [] };
  // Whether something still waits elsewhere is known from it, when it is taken back.
  const left = call?.wasLeft ? { handsOver: 'renew' as const } : {};
  return { record: blank, parts: [say('walk.forgotten')], erase: true, ...left };
}

/** Without a clear yes nothing is passed on; a call that was about to be closed is closed then. */
function takeHandOverAnswer(
  programme: Programme,
  record: WalkRecord,
  pending: Pending & { kind: 'handOver' },
  text: string,
): Turned {
  const { call } = record;
  if (!call) return { record: withoutPending(record), parts: [] };
  const passed = isPhrase(text, wordsOf(programme.checklist, record)?.skip ?? []);
  const answer = passed ? 'no' : readClearly(programme.checklist, record, text, 'request');
  if (answer === 'yes') return agreeToHandOver(record, call, pending.to);
  if (answer === undefined) return { record, parts: [say('hand-over.yes-or-no')] };
  const asked: WalkRecord = { ...withoutPending(record), call: { ...call, asked: true } };
  return pending.closing ? confirm(programme, asked) : { record: asked, parts: [say('hand-over.not')] };
}

/** Takes what is said to a short question; nothing when it is something else that leaves the question behind. */
export function takePending(
  programme: Programme,
  record: WalkRecord,
  text: string,
  reading: Reading,
): Turned | undefined {
  const { pending } = record.cursor;
  const rest = withoutPending(record);
  if (pending?.kind === 'handOver') {
    if (reading.kind !== 'answer' && reading.kind !== 'notUnderstood') return undefined;
    return takeHandOverAnswer(programme, record, pending, text);
  }
  const { checklist } = programme;
  if (pending?.kind === 'emergency') {
    // Not a clear no is taken as yes: a false order to leave costs a minute.
    if (readYesNo(checklist, record, text) !== 'no') return stopForEmergency(programme, rest);
    const on = rest.cursor.phase === 'paused' ? advance(programme, rest, { type: 'RESUME' }) : rest;
    return { record: on, parts: [say('emergency.not-one')] };
  }
  const answer = readClearly(checklist, record, text, 'request');
  if (pending?.kind === 'startOver' && answer === 'yes') {
    const record = startAnew(withoutDone(advance(programme, rest, { type: 'START_OVER' })));
    return { record, parts: [say('walk.started-over')] };
  }
  if (pending?.kind === 'forget' && answer === 'yes') return forget(rest);
  return { record: rest, parts: [say('walk.kept')] };
}

import type { Reading } from '../../answers/reading/reading.ts';
import type { Call } from '../../flow/schema/call.ts';
import { withoutPassing, withPending } from '../advance.ts';
import { takeHandOver } from '../hand-over/leave.ts';
import type { HandOverTo } from '../hand-over/terms.ts';
import type { Programme } from '../programme.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import { hasPhoneDigits, takeNumber } from './call-back.ts';
import type { CallState } from './call-state.ts';
import { landElsewhere } from './land-elsewhere.ts';
import { keepNote } from './notes.ts';
import { leftOutParts } from './short-call.ts';
import { afterPhrase, isPhrase } from './spoken-words.ts';
import { stopParts, unsafeIn } from './unsafe.ts';

/** A call takes at most two hours: more is a slip of the keys. */
const mostMinutes = 120;

function takeMinutes(record: WalkRecord, state: CallState, text: string, words: Call['words']): Turned {
  if (isPhrase(text, words.noLimit)) {
    const { minutes: _, ...rest } = state;
    return { record: { ...record, call: rest }, parts: [say('call.minutes.off')] };
  }
  const minutes = /^\d{1,3}$/u.test(text) ? Number(text) : 0;
  if (minutes < 1 || minutes > mostMinutes) return { record, parts: [say('call.minutes.what')] };
  return { record: { ...record, call: { ...state, minutes } }, parts: [say('call.minutes', { minutes })] };
}

function handOverTo(text: string, words: Call['words']): HandOverTo | undefined {
  if (isPhrase(text, words.toColleague)) return 'colleague';
  return isPhrase(text, words.handOver) ? 'caller' : undefined;
}

/** What may be typed at any moment of a call. */
function takeWords(
  programme: Programme,
  record: WalkRecord,
  state: CallState,
  text: string,
  words: Call['words'],
): Turned | undefined {
  if (isPhrase(text, words.stopLine) || /^!+$/u.test(text))
    return { record, parts: stopParts('any'), alone: true };
  const note = afterPhrase(text, words.note);
  if (note !== undefined) return keepNote(programme, record, note);
  const minutes = afterPhrase(text, words.minutes);
  if (minutes !== undefined) return takeMinutes(record, state, minutes, words);
  const to = handOverTo(text, words);
  const { pending } = record.cursor;
  if (to && (!pending || pending.kind === 'opening' || pending.kind === 'handOver'))
    return takeHandOver(record, state, to);
  if (isPhrase(text, words.leftOut)) return { record, parts: leftOutParts(programme, record) };
  const number = afterPhrase(text, words.callBack);
  // The question for it takes it itself.
  if (number === undefined || (pending?.kind === 'opening' && pending.ask === 'number')) return undefined;
  const unclear = { record, parts: [say('call.number.unclear')] };
  return takeNumber(record, state, number, words) ?? (hasPhoneDigits(number) ? unclear : undefined);
}

/** What is said now puts a short question out of sight: it waits for no yes any more. */
function outOfSight(before: WalkRecord, turned: Turned): Turned {
  if (turned.record.cursor.pending !== before.cursor.pending) return turned;
  return { ...turned, record: withoutPassing(turned.record) };
}

/** The stop line first. The words are kept as a note, never taken for an answer: the question is asked again. */
function takeUnsafe(programme: Programme, record: WalkRecord, what: string, text: string): Turned {
  const turned = keepNote(programme, record, text);
  return { ...turned, parts: [...turned.parts, ...stopParts(what)], alone: true };
}

/**
 * What a volunteer types besides answers: the stop line, notes, minutes, a number to call back, an answer to another
 * question, and words which say that the caller starts something unsafe. Nothing when it is none of these, or nobody
 * is guided.
 */
export function takeCallText(
  programme: Programme,
  record: WalkRecord,
  text: string,
  reading: Reading,
): Turned | undefined {
  const { call } = programme.checklist.flow;
  if (!call || !record.call || text === '') return undefined;
  const { pending: waits } = record.cursor;
  const taken = takeWords(programme, record, record.call, text, call.words);
  if (taken) {
    const turned = outOfSight(record, taken);
    // A note about smoke is kept, and asked about.
    if (reading.kind !== 'emergency' || waits?.kind === 'emergency' || waits?.kind === 'safe') return turned;
    const pending = withPending(turned.record, { kind: 'emergency', matched: reading.matched });
    const asked = say('emergency.is-it', { said: reading.matched }, 'warning');
    return { record: pending, parts: [...turned.parts, asked] };
  }
  if (reading.kind === 'emergency') return undefined;
  const unsafe = unsafeIn(call, text);
  if (unsafe !== undefined) return outOfSight(record, takeUnsafe(programme, record, unsafe, text));
  const asks = record.cursor.phase === 'asking' || record.cursor.phase === 'readBack';
  if (record.cursor.pending || !asks) return undefined;
  return landElsewhere(programme, record, text, reading, call.words);
}

import type { Reading } from '../../answers/reading/reading.ts';
import type { Values } from '../../wording/say.ts';
import { withoutPending } from '../advance.ts';
import type { Part } from '../message.ts';
import type { Programme } from '../programme.ts';
import { readClearly, readYesNo } from '../read-yes-no.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import { wordsOf } from '../words-of.ts';
import { takeNumber, withoutNumber } from './call-back.ts';
import { type CallState, type OpeningAsk, openingAsks } from './call-state.ts';
import { afterPhrase, isPhrase } from './spoken-words.ts';

/** What a volunteer is told and reads out before the first question. */
export function openingParts(state: CallState): Part[] {
  const behalf = state.behalf ?? { text: 'call.opening.behalf' };
  return [
    say('call.opening.title', undefined, 'heading'),
    say('call.opening.danger', undefined, 'warning'),
    say('call.opening.keys', undefined, 'quiet'),
    ...(state.handsOver ? [say('hand-over.keys', undefined, 'quiet')] : []),
    say('call.opening.promise', undefined, 'quiet'),
    ...(state.minutes === undefined ? [] : [say('call.opening.short', { minutes: state.minutes }, 'quiet')]),
    say('call.opening.who', { behalf }),
  ];
}

/** What a volunteer is told when a dropped call goes on. */
export function resumedParts(record: WalkRecord, state: CallState): Part[] {
  const notes = record.notes.map((note) => note.text);
  const answered = Object.keys(record.sheet).length;
  return [
    say(state.takenOver ? 'hand-over.taken-call' : 'call.resumed', { answered }, 'heading'),
    ...(state.callBack === undefined ? [] : [say('call.resumed.number', { number: state.callBack })]),
    ...(notes.length > 0 ? [say('call.resumed.notes', { notes: { list: notes } })] : []),
    say(state.takenOver ? 'hand-over.say' : 'call.resumed.say', undefined, 'warning'),
  ];
}

/** Where a call is kept and for how long, as values of a text. */
function keeping({ handsOver }: CallState): Values {
  const days = handsOver?.keptDays;
  const kept = days === undefined ? (handsOver ? 'alone' : 'here') : days === 0 ? 'service' : 'days';
  return { kept, days: days ?? 0 };
}

/** One of the questions at the start of a call, to be read aloud. */
export function openingAsk(ask: OpeningAsk, state: CallState): Part {
  return say(`call.${ask}`, ask === 'consent' ? keeping(state) : undefined);
}

/** What of the opening still has to be asked, once danger was. */
export function nextOpening(state: CallState): OpeningAsk | undefined {
  return openingAsks.find((ask) => !state.opened.includes(ask));
}

const done = (record: WalkRecord, state: CallState, ask: OpeningAsk): WalkRecord => ({
  ...withoutPending(record),
  call: { ...state, opened: [...state.opened, ask] },
});

/** Consent refused: what was typed so far goes, and general advice is all there is. */
function refuse(record: WalkRecord): Turned {
  const { call: _, units: __, ...rest } = record;
  const blank: WalkRecord = { ...rest, sheet: {}, cursor: { phase: 'paused' }, notes: [] };
  return { record: blank, parts: [say('call.consent.no')], erase: true };
}

function takeYesNo(
  programme: Programme,
  record: WalkRecord,
  state: CallState,
  ask: 'ground' | 'consent',
  text: string,
  passed: boolean,
): Turned {
  const { checklist } = programme;
  const answer =
    ask === 'consent' ? readClearly(checklist, record, text, 'request') : readYesNo(checklist, record, text);
  if (answer === 'no' && ask === 'consent') return refuse(record);
  if (answer === 'no')
    return { record: done(record, state, ask), parts: [say('call.ground.no', undefined, 'warning')] };
  // Consent is given or not: silence is none.
  if (answer === 'yes' || (passed && ask === 'ground'))
    return { record: done(record, state, ask), parts: [] };
  return { record, parts: [passed ? openingAsk('consent', state) : say('call.yes-or-no')] };
}

/** Takes what was typed for one of the questions at the start of a call. */
function takeOpening(
  programme: Programme,
  record: WalkRecord,
  state: CallState,
  ask: OpeningAsk,
  text: string,
): Turned {
  const { flow } = programme.checklist;
  const words = wordsOf(programme.checklist, record);
  const passed = isPhrase(text, [...(words?.skip ?? []), ...(words?.notSure ?? [])]);
  switch (ask) {
    case 'ground':
    case 'consent':
      return takeYesNo(programme, record, state, ask, text, passed);
    case 'where': {
      if (passed || text === '') return { record: done(record, state, ask), parts: [] };
      const noted = { ...record, notes: [...record.notes, { text }] };
      return { record: done(noted, state, ask), parts: [say('call.where.noted', { said: text }, 'quiet')] };
    }
    case 'number': {
      if (passed || text === '')
        return {
          record: done(record, withoutNumber(state), ask),
          parts: [say('call.number.none', undefined, 'quiet')],
        };
      const number = flow.call && (afterPhrase(text, flow.call.words.callBack) ?? text);
      const taken = flow.call && number && takeNumber(record, state, number, flow.call.words);
      if (!taken) return { record, parts: [say('call.number.unclear')] };
      return { ...taken, record: done(taken.record, taken.record.call ?? state, ask) };
    }
  }
}

/** Commands that mean the call and not the question at its start. */
const calls = new Set(['pause', 'stop', 'startOver', 'finish', 'forget']);

/**
 * Takes what was typed while one of the questions at the start of a call waits; nothing for words of danger and
 * commands, which are taken as always.
 */
export function takeOpeningText(
  programme: Programme,
  record: WalkRecord,
  text: string,
  reading: Reading,
): Turned | undefined {
  const { pending } = record.cursor;
  if (pending?.kind !== 'opening' || !record.call) return undefined;
  if (reading.kind === 'emergency') return undefined;
  if (reading.kind === 'command' && calls.has(reading.command)) return undefined;
  return takeOpening(programme, record, record.call, pending.ask, text);
}

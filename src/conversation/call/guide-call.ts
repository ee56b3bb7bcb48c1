import { pathOf } from '../../answers/path.ts';
import { firstOpen } from '../../machine/place.ts';
import { advance, withPending } from '../advance.ts';
import type { HandOverTerms } from '../hand-over/terms.ts';
import type { Message } from '../message.ts';
import type { Programme } from '../programme.ts';
import { readBackParts } from '../read-back.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import type { CallState } from './call-state.ts';
import { nextOpening, openingAsk } from './opening.ts';
import { goToMostTelling, leftOutParts } from './short-call.ts';
import { isPhrase } from './spoken-words.ts';

/** When a call counts as begun: one that goes on after it dropped does not count the time between. */
function sinceOf(record: WalkRecord, call: CallState, message: Message, now: Date): string {
  const untouched = call.opened.length === 0 && Object.keys(record.sheet).length === 0;
  if (untouched) return now.toISOString();
  if (message.kind !== 'hello') return call.since;
  const spent = Math.max(0, Date.parse(record.updatedAt) - Date.parse(call.since));
  return new Date(now.getTime() - spent).toISOString();
}

/** The record of a guided call as a turn begins, with how it can be passed on now. */
export function beginCall(
  programme: Programme,
  record: WalkRecord,
  message: Message,
  now: Date,
  handsOver: HandOverTerms | undefined,
): WalkRecord {
  if (record.audience !== 'volunteer' || !programme.checklist.flow.call) return record;
  const before: CallState = record.call ?? { since: now.toISOString(), opened: [] };
  const { handsOver: _, takenOver, ...call } = before;
  return {
    ...record,
    call: {
      ...call,
      since: sinceOf(record, before, message, now),
      ...(takenOver && message.kind === 'hello' ? { takenOver } : {}),
      ...(handsOver ? { handsOver } : {}),
    },
  };
}

/** After starting over it is the next call: nothing of the last caller stays. */
export function startAnew(record: WalkRecord): WalkRecord {
  if (!record.call) return record;
  const { behalf, minutes, since, wasLeft } = record.call;
  const call: CallState = {
    since,
    ...(wasLeft ? { wasLeft } : {}),
    opened: [],
    ...(behalf === undefined ? {} : { behalf }),
    ...(minutes === undefined ? {} : { minutes }),
  };
  return { ...record, call, notes: [] };
}

/** Whether a text says that whoever wrote it guides a caller, and is not known to. */
export function wantsToGuide(programme: Programme, record: WalkRecord, text: string): boolean {
  const { call } = programme.checklist.flow;
  return call !== undefined && record.audience !== 'volunteer' && isPhrase(text, call.words.guide);
}

/** Whoever says before anything was answered that they guide a caller gets the words for it. */
export function guidesInstead(programme: Programme, record: WalkRecord, message: Message): boolean {
  if (message.kind !== 'text' || record.silent || Object.keys(record.sheet).length > 0) return false;
  return wantsToGuide(programme, record, message.text);
}

/** Whether the question about danger was answered: nothing else is asked before. */
function dangerAsked(programme: Programme, record: WalkRecord): boolean {
  const danger = programme.checklist.index.roles.get('danger');
  return danger === undefined || record.sheet[danger.id] !== undefined;
}

function askOpening(programme: Programme, turned: Turned): Turned {
  const { record } = turned;
  const { call } = record;
  if (!call) return turned;
  const ask = nextOpening(call);
  if (ask === undefined || record.cursor.phase !== 'asking' || !dangerAsked(programme, record)) return turned;
  const { pending } = record.cursor;
  if (pending && pending.kind !== 'opening') return turned;
  // Asked again only where something else was said in between.
  const again = pending?.kind === 'opening' && pending.ask === ask;
  const quiet =
    again &&
    turned.parts.some(
      (one) => one.kind === 'say' && /^call\.(?:yes-or-no|number\.unclear|consent)$/u.test(one.text),
    );
  return {
    ...turned,
    record: withPending(record, { kind: 'opening', ask }),
    parts: quiet ? turned.parts : [...turned.parts, openingAsk(ask, call)],
  };
}

/** Whether the walk went on by itself, after an answer, and not to where the volunteer wanted. */
function wentOn(before: WalkRecord, after: WalkRecord): boolean {
  return before.sheet !== after.sheet && before.cursor.key !== after.cursor.key;
}

/** A limit that was changed leads to the question that is worth most now; one that was lifted to the first that waits. */
function newLimit(programme: Programme, turned: Turned, now: Date): Turned {
  const { record } = turned;
  const minutes = record.call?.minutes;
  if (minutes !== undefined)
    return withEnd(programme, turned, goToMostTelling(programme, record, minutes, now));
  const first = firstOpen(programme.checklist.index, record.sheet);
  return first ? { ...turned, record: advance(programme, record, { type: 'GO', key: first.key }) } : turned;
}

/** Where no more questions fit, says so and shows the answers. */
function withEnd(programme: Programme, turned: Turned, next: WalkRecord): Turned {
  if (next.cursor.phase !== 'readBack') return { ...turned, record: next };
  const minutes = next.call?.minutes ?? 0;
  const over = say('call.time-up', { minutes, more: minutes + 5 }, 'warning');
  return {
    ...turned,
    record: next,
    parts: [
      ...turned.parts,
      over,
      ...leftOutParts(programme, next),
      ...readBackParts(programme.checklist, next),
    ],
  };
}

/**
 * After each turn of a guided call: the questions at its start, then in a short call the one that is worth most of the
 * time that is left. A volunteer who jumps is left where they jumped to.
 */
export function guideCall(programme: Programme, before: WalkRecord, turned: Turned, now: Date): Turned {
  const { record } = turned;
  if (!record.call || turned.erase) return turned;
  const opened = askOpening(programme, turned);
  const { phase, pending } = opened.record.cursor;
  if (pending?.kind === 'opening') return opened;
  if (phase !== 'asking' && phase !== 'readBack') return turned;
  const changed = before.call !== undefined && before.call.minutes !== record.call.minutes;
  if (changed && !pending) return newLimit(programme, turned, now);
  if (before.cursor.phase === 'asking' && phase === 'readBack')
    return { ...turned, parts: [...turned.parts, ...leftOutParts(programme, record)] };
  const { minutes } = record.call;
  if (minutes === undefined || phase !== 'asking' || pending) return turned;
  const openingOver = before.cursor.pending?.kind === 'opening';
  if (!openingOver && !wentOn(before, record)) return turned;
  const next = goToMostTelling(programme, record, minutes, now);
  const step =
    next.cursor.key === undefined
      ? undefined
      : pathOf(programme.checklist.index, next.sheet).byKey.get(next.cursor.key);
  return step || next.cursor.phase === 'readBack' ? withEnd(programme, turned, next) : turned;
}

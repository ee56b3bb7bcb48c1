import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { findPhrase } from '../reading/promise.ts';
import type { Said } from './said.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

const told = new Set(['tell', 'advise', 'caution']);

/** Whether a played alarm waits for the trainee's word. */
export function isAlarmOpen(state: PracticeState): boolean {
  return state.events.findLast((event) => event.kind === 'alarm')?.outcome === 'played';
}

/**
 * Whether a message answers the played alarm: an order to leave, told to the resident or said outright. Without
 * "tell them" it counts only when it is nothing that the trainee may have seen: `danger` says so.
 */
export function answersAlarm(practice: Practice, state: PracticeState, said: Said, danger: boolean): boolean {
  if (!isAlarmOpen(state)) return false;
  const { leave, promises } = practice.content.words;
  const toResident = said.verb !== undefined && told.has(said.verb);
  if (!toResident && (danger || said.verb !== undefined)) return false;
  const tokens = toResident ? said.rest : said.tokens;
  return findPhrase(tokens, leave, promises.denies) !== undefined;
}

/** The order to leave was given: the played part ends, and the rest of the walk can be practised. */
export function alarmAnswered(state: PracticeState): PracticeTurned {
  return {
    state: withEvents(state, [{ kind: 'alarm', outcome: 'answered' }]),
    parts: [say('practice.alarm.answered')],
  };
}

/** Anything else was said: the resident waited in vain. */
export function alarmIgnored(state: PracticeState): PracticeTurned {
  return {
    state: withEvents(state, [{ kind: 'alarm', outcome: 'ignored' }]),
    parts: [say('practice.alarm.ignored', undefined, 'warning')],
  };
}

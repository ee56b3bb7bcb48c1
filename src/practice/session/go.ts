import { findStop } from '../../answers/reading/find-target.ts';
import type { Token } from '../../answers/reading/tokens.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { stopsOf } from './known.ts';
import type { PracticeEvent, PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** The stop that these words name. */
export function namedStop(practice: Practice, tokens: readonly Token[]): string | undefined {
  const { stops } = practice.programme.checklist.flow;
  const words = tokens.filter((token) => token.kind !== 'mark').map((token) => token.stem);
  return words.length === 0 ? undefined : findStop(words, stops);
}

function arrival(state: PracticeState, stop: string): Part[] {
  const seen = (state.house.distractors[stop] ?? []).map((id) => say(`practice.distractor/${id}`));
  return [
    say(`stop/${stop}/title`, undefined, 'heading'),
    say(`stop/${stop}/arrive`, undefined, 'quiet'),
    ...seen,
  ];
}

/** Goes to a stop. Things that catch the eye are told at the first visit; there an alarm may be played. */
export function goTo(practice: Practice, state: PracticeState, stop: string): PracticeTurned {
  if (!stopsOf(practice, state).some((one) => one.id === stop))
    return { state, parts: [say('practice.go.not-here', { stop: { text: `stop/${stop}/title` } })] };
  const known = state.events.some((event) => event.kind === 'went' && event.stop === stop);
  const alarm =
    !known && state.house.alarmAt === stop && !state.events.some((event) => event.kind === 'alarm');
  const events: PracticeEvent[] = [
    ...(state.at === stop ? [] : [{ kind: 'went', stop } as const]),
    ...(alarm ? [{ kind: 'alarm', outcome: 'played' } as const] : []),
  ];
  const parts = known ? [say(`stop/${stop}/title`, undefined, 'heading')] : arrival(state, stop);
  return {
    state: { ...withEvents(state, events), at: stop },
    parts: alarm ? [...parts, say('practice.alarm.played', undefined, 'warning')] : parts,
  };
}

/** Goes where a message says. */
export function go(practice: Practice, state: PracticeState, rest: readonly Token[]): PracticeTurned {
  const stop = namedStop(practice, rest);
  if (stop !== undefined) return goTo(practice, state, stop);
  const titles = stopsOf(practice, state).map((one) => ({ text: `stop/${one.id}/title` }));
  return { state, parts: [say('practice.go.where', { stops: { list: titles } })] };
}

import { findStop } from '../../answers/reading/find-target.ts';
import { stemsOf, type Token } from '../../answers/reading/tokens.ts';
import { wordings } from '../../answers/reading/wordings.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Stop } from '../../flow/schema/file.ts';
import type { Practice } from '../practice.ts';
import { where } from './hint.ts';
import { stopsOf } from './known.ts';
import { stopOfThing } from './meant-steps.ts';
import type { PracticeEvent, PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

const measures = new Set(['foot', 'ft', 'metre', 'meter', 'm', 'to', 'about'].flatMap(stemsOf));

/** The words of a stop's name, then without the measures that a title may add: "the yard (5 ft to 30 ft)". */
function namesIn(tokens: readonly Token[]): string[][] {
  const words = tokens.filter((token) => token.kind !== 'mark');
  const measure = words.findIndex((token) => token.kind === 'number');
  const isAdded = words.slice(measure).every((token) => token.kind === 'number' || measures.has(token.stem));
  return [words, ...(measure > 0 && isAdded ? [words.slice(0, measure)] : [])]
    .map((list) => list.map((token) => token.stem))
    .filter((list) => list.length > 0);
}

function firstStop(tokens: readonly Token[], stops: readonly Stop[]): string | undefined {
  for (const name of namesIn(tokens)) {
    const found = findStop(name, stops);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The stop that these words name. */
export function namedStop(practice: Practice, tokens: readonly Token[]): string | undefined {
  return firstStop(tokens, practice.programme.checklist.flow.stops);
}

const titled = new WeakMap<object, readonly Stop[]>();
const withoutBrackets = (title: string) => title.replace(/\(.*\)/, '');

/** The stop whose title or id these words are: "vents", and not what is found there. */
export function titledStop(practice: Practice, tokens: readonly Token[]): string | undefined {
  const { stops } = practice.programme.checklist.flow;
  const bare =
    titled.get(stops) ??
    stops.map((stop) => ({
      ...stop,
      title: wordings(stop.title).map(withoutBrackets)[0] ?? stop.id,
      words: [],
    }));
  titled.set(stops, bare);
  return firstStop(tokens, bare);
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

/** Goes where a message says: to a stop, or to the stop at which a thing is. */
export function go(practice: Practice, state: PracticeState, rest: readonly Token[]): PracticeTurned {
  const stop = namedStop(practice, rest) ?? stopOfThing(practice, state, rest);
  if (stop !== undefined) return goTo(practice, state, stop);
  const titles = stopsOf(practice, state).map((one) => ({ text: `stop/${one.id}/title` }));
  return { state, parts: [say('practice.go.where', { stops: { list: titles } })] };
}

/** Goes one stop on, or one back, in the order of the walk; on to the first stop at the beginning. */
export function goAlong(practice: Practice, state: PracticeState, by: 1 | -1): PracticeTurned {
  const stops = stopsOf(practice, state);
  const at = stops.findIndex((one) => one.id === state.at);
  const to = stops[at + by] ?? (at < 0 ? stops[0] : undefined);
  if (to) return goTo(practice, state, to.id);
  return by < 0 ? { state, parts: [say('practice.go.first')] } : where(practice, state);
}

import { tokenise } from '../../answers/reading/tokens.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Place } from '../../findings/place.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { namedPlaces } from '../reading/places.ts';
import { findPhrase } from '../reading/promise.ts';
import { choiceOf } from './choice-of.ts';
import { askWhich } from './choose.ts';
import { knownHouse } from './known.ts';
import type { Said } from './said.ts';
import { saidLengthMetres } from './said-length.ts';
import { sayAction, whereverNeeded } from './say-place.ts';
import type { PendingChoice, PracticeEvent, PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** A measure this many times off a limit is about something else. */
const sameKindOfMeasure = 10;
const slack = 1e-6;

/** The limit behind a job that a measure in the advice breaks; the job's first limit with a direction is the one meant. */
export function brokenLimit(
  practice: Practice,
  state: PracticeState,
  action: string,
  text: string,
): { readonly id: string; readonly saidMetres: number } | undefined {
  const said = saidLengthMetres(tokenise(text.toLowerCase()));
  const rules = practice.programme.checklist.flow.actions.find((one) => one.id === action)?.rules ?? [];
  const { limits } = knownHouse(practice, state).assessment.path;
  const directions = practice.content.words.limits;
  const id = rules.find((rule) => directions[rule] !== undefined && limits.get(rule)?.dimension === 'length');
  const value = id === undefined ? undefined : limits.get(id)?.value;
  if (id === undefined || said === undefined || typeof value !== 'number') return undefined;
  if (said > value * sameKindOfMeasure || said < value / sameKindOfMeasure) return undefined;
  const kept = directions[id] === 'atLeast' ? said >= value * (1 - slack) : said <= value * (1 + slack);
  return kept ? undefined : { id, saidMetres: said };
}

function placesFor(
  practice: Practice,
  state: PracticeState,
  action: string,
  choice: PendingChoice,
): readonly Place[] {
  const per = practice.programme.checklist.flow.actions.find((one) => one.id === action)?.per ?? 'house';
  const named = namedPlaces(knownHouse(practice, state).assessment.path, per, choice.sides, choice.member);
  return named.kind === 'places' ? named.places : [];
}

/** Gives the advice once it is known which. Said without a place it counts wherever the job is called for. */
export function giveAdvice(practice: Practice, state: PracticeState, choice: PendingChoice): PracticeTurned {
  const [action = ''] = choice.ids;
  const places = placesFor(practice, state, action, choice);
  const { assessment } = knownHouse(practice, state);
  const limit = brokenLimit(practice, state, action, choice.text);
  const event: PracticeEvent = {
    kind: 'advised',
    action,
    places: places.map((place) => place.suffix),
    ...(limit ? { limit } : {}),
  };
  const values = places.length > 0 ? (sayAction(assessment, action, places).values ?? {}) : whereverNeeded;
  const noted: Part = say('practice.advise.noted', { advice: { text: `action/${action}/do`, values } });
  return { state: withEvents(state, [event]), parts: [noted] };
}

/** Reads the advice, looking first for what no rulebook allows. */
export function advise(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const { words } = practice.content;
  const wrong = words.wrongAdvice.find(
    (one) => findPhrase(said.rest, one.words, words.promises.denies) !== undefined,
  );
  if (wrong) {
    return {
      state: withEvents(state, [{ kind: 'wrongAdvice', id: wrong.id }]),
      parts: [say('practice.advise.heard')],
    };
  }
  const { stems } = contentOfTokens(practice.lexicon.reader, said.rest);
  const called = new Set(knownHouse(practice, state).assessment.ranked.map((one) => one.proposal.action.id));
  const matches = meant(matchIdeas(practice.lexicon.actions, stems, (id) => (called.has(id) ? 0.1 : 0)));
  const choice = choiceOf(practice, said, 'advise', matches);
  if (choice.ids.length === 0) return { state, parts: [say('practice.advise.what')] };
  return choice.ids.length > 1 ? askWhich(state, choice) : giveAdvice(practice, state, choice);
}

import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { findNamedMember, namedPlaces } from '../reading/places.ts';
import { askWhere, askWhich } from './choose.ts';
import { type KnownHouse, knownHouse } from './known.ts';
import type { Said } from './said.ts';
import { sayFinding } from './say-place.ts';
import { type PendingChoice, type PracticeState, recordedPairs } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** What is here and can be looked at is meant rather than what is not; that gives no finding away. */
function preference(practice: Practice, state: PracticeState, known: KnownHouse, sides: readonly string[]) {
  return (id: string): number => {
    const facts = practice.facts.get(id);
    const here = facts?.stop === state.at ? 0.12 : 0;
    const suffixes = sides.map((side) => `${id}@${side}`);
    const pairs = sides.length > 0 ? suffixes : [id];
    const seen = pairs.some((pair) => known.pairs.get(pair)?.observable);
    return here + (seen ? 0.1 : 0);
  };
}

/** Records a finding once it is known which; asks where when that is not said. */
export function recordFinding(
  practice: Practice,
  state: PracticeState,
  choice: PendingChoice,
): PracticeTurned {
  const [id = ''] = choice.ids;
  const known = knownHouse(practice, state);
  const per = practice.facts.get(id)?.finding.per ?? 'house';
  const named = namedPlaces(known.assessment.path, per, choice.sides, choice.member);
  if (named.kind === 'where') return askWhere(practice, state, choice, per);
  if (named.kind === 'nowhere') return { state, parts: [say('practice.find.nowhere')] };
  const before = new Set(recordedPairs(state));
  const fresh = named.places.filter((place) => !before.has(id + place.suffix));
  const { text, values } = sayFinding(known.assessment, id, named.places);
  if (fresh.length === 0)
    return { state, parts: [say('practice.find.already', { finding: { text, values: values ?? {} } })] };
  const events = fresh.map((place) => ({ kind: 'recorded', pair: id + place.suffix }) as const);
  const noted = sayFinding(known.assessment, id, fresh);
  return {
    state: withEvents(state, events),
    parts: [say('practice.find.noted', { finding: { text: noted.text, values: noted.values ?? {} } })],
  };
}

/** Reads what was found, and records it. */
export function find(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const { stems, sides } = contentOfTokens(practice.lexicon.reader, said.rest);
  const known = knownHouse(practice, state);
  const matches = meant(
    matchIdeas(practice.lexicon.findings, stems, preference(practice, state, known, sides)),
  );
  if (matches.length === 0) return { state, parts: [say('practice.find.what')] };
  const member = findNamedMember(practice.programme.checklist.flow.groups, said.rest);
  const choice: PendingChoice = {
    verb: 'find',
    ids: matches.map((match) => match.id),
    sides,
    ...(member ? { member } : {}),
    text: said.text,
  };
  return matches.length > 1 ? askWhich(state, choice) : recordFinding(practice, state, choice);
}

/** Takes findings back once it is known which: those of this kind at the places named, or all of them. */
export function takeBackFinding(
  practice: Practice,
  state: PracticeState,
  choice: PendingChoice,
): PracticeTurned {
  const [id = ''] = choice.ids;
  const known = knownHouse(practice, state);
  const per = practice.facts.get(id)?.finding.per ?? 'house';
  const named = namedPlaces(known.assessment.path, per, choice.sides, choice.member);
  const list = recordedPairs(state).filter((pair) => pair === id || pair.startsWith(`${id}@`));
  const wanted = named.kind === 'places' ? named.places.map((place) => id + place.suffix) : list;
  const gone = list.filter((pair) => wanted.includes(pair));
  if (gone.length === 0) return { state, parts: [say('practice.take-back.none')] };
  const events = gone.map((pair) => ({ kind: 'tookBack', pair }) as const);
  return {
    state: withEvents(state, events),
    parts: [say('practice.take-back.done', { count: gone.length })],
  };
}

/** Reads which finding is taken back, among those on the list. */
export function takeBack(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  const { stems, sides } = contentOfTokens(practice.lexicon.reader, said.rest);
  const kinds = new Set(recordedPairs(state).map((pair) => pair.split('@')[0] ?? ''));
  const matches = meant(matchIdeas(practice.lexicon.findings, stems).filter((match) => kinds.has(match.id)));
  if (matches.length === 0) return { state, parts: [say('practice.take-back.none')] };
  const member = findNamedMember(practice.programme.checklist.flow.groups, said.rest);
  const choice: PendingChoice = {
    verb: 'takeBack',
    ids: matches.map((match) => match.id),
    sides,
    ...(member ? { member } : {}),
    text: said.text,
  };
  return matches.length > 1 ? askWhich(state, choice) : takeBackFinding(practice, state, choice);
}

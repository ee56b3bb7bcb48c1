import { stemsOf } from '../../answers/reading/tokens.ts';
import { wordings } from '../../answers/reading/wordings.ts';
import { say } from '../../conversation/turned.ts';
import { placesOf } from '../../findings/place.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { type Match, matchIdeas, meant } from '../reading/match.ts';
import { type NamedPlaces, namedPlaces } from '../reading/places.ts';
import { choiceOf } from './choice-of.ts';
import { askWhere, askWhich } from './choose.ts';
import { type KnownHouse, knownHouse } from './known.ts';
import type { Said } from './said.ts';
import { sayFinding } from './say-place.ts';
import { type PendingChoice, type PracticeState, recordedPairs } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

const farOff = 0.3;

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

/** The finding that a choice is about, and the places it names. */
interface Chosen {
  readonly id: string;
  readonly per: string;
  readonly known: KnownHouse;
  readonly named: NamedPlaces;
}

function chosenBy(practice: Practice, state: PracticeState, choice: PendingChoice): Chosen {
  const [id = ''] = choice.ids;
  const known = knownHouse(practice, state);
  const per = practice.facts.get(id)?.finding.per ?? 'house';
  return { id, per, known, named: namedPlaces(known.assessment.path, per, choice.sides, choice.member) };
}

/** Records a finding once it is known which; asks where when that is not said. */
export function recordFinding(
  practice: Practice,
  state: PracticeState,
  choice: PendingChoice,
): PracticeTurned {
  const { id, per, known, named } = chosenBy(practice, state, choice);
  if (named.kind === 'where') return askWhere(practice, state, choice, per);
  if (named.kind === 'nowhere') return { state, parts: [say('practice.find.nowhere')] };
  const before = new Set(recordedPairs(state));
  const fresh = named.places.filter((place) => !before.has(id + place.suffix));
  const { text, values } = sayFinding(known.assessment, id, fresh.length === 0 ? named.places : fresh);
  const noted = fresh.length === 0 ? 'practice.find.already' : 'practice.find.noted';
  const events = fresh.map((place) => ({ kind: 'recorded', pair: id + place.suffix }) as const);
  return {
    state: withEvents(state, events),
    parts: [say(noted, { finding: { text, values: values ?? {} } })],
  };
}

/** Takes findings back once it is known which: those of this kind at the places named, or all of them. */
export function takeBackFinding(
  practice: Practice,
  state: PracticeState,
  choice: PendingChoice,
): PracticeTurned {
  const { id, named, known } = chosenBy(practice, state, choice);
  const list = recordedPairs(state).filter((pair) => pair === id || pair.startsWith(`${id}@`));
  const wanted = named.kind === 'places' ? named.places.map((place) => id + place.suffix) : list;
  const gone = list.filter((pair) => wanted.includes(pair));
  if (gone.length === 0) return { state, parts: [say('practice.take-back.none')] };
  const events = gone.map((pair) => ({ kind: 'tookBack', pair }) as const);
  const places = gone.flatMap((pair) => known.pairs.get(pair)?.place ?? []);
  const { text, values } = sayFinding(known.assessment, id, places);
  return {
    state: withEvents(state, events),
    parts: [say('practice.take-back.done', { finding: { text, values: values ?? {} } })],
  };
}

/** What can be somewhere at this house is meant rather than what fits the words a little better. */
function withPlaces(practice: Practice, known: KnownHouse, matches: readonly Match[]): readonly Match[] {
  const { path } = known.assessment;
  const there = matches.filter(
    ({ id }) => placesOf(practice.facts.get(id)?.finding.per ?? 'house', path).length > 0,
  );
  const [best] = matches;
  const [first] = there;
  return first && best && first.score > best.score - farOff ? there : matches;
}

const kindOf = (pair: string): string => pair.split('@')[0] ?? '';
const settled = { find: recordFinding, takeBack: takeBackFinding };
const unknown = { find: 'practice.find.what', takeBack: 'practice.take-back.none' } as const;

const denials = new Set(['no', 'not', 'none', 'nothing', 'never', 'dont', 'isnt', 'arent', 'doesnt', 'cant']);

/** "No leaves on the roof": the finding is denied, unless it is itself that something is missing, as in "no mesh". */
function isDenied(practice: Practice, { rest, tokens }: Said, id: string): boolean {
  const { findings, reader } = practice.lexicon;
  const denied = tokens.filter(({ text }) => denials.has(text.replace(/['’]/g, '')));
  if (denied.length === 0) return false;
  const own = findings.list.find((idea) => idea.id === id)?.weights;
  const sentence = wordings(practice.facts.get(id)?.finding.say ?? '').flatMap(stemsOf);
  const missing =
    denied.some((token) => sentence.includes(token.stem)) ||
    contentOfTokens(reader, denied).stems.some((stem) => own?.has(stem));
  const things = contentOfTokens(
    reader,
    rest.filter((token) => !denied.includes(token)),
  ).stems;
  return !missing || matchIdeas(findings, things).length === 0;
}

/** Reads which finding is meant and does what is to be done with it: only those on the list can be taken back. */
function readFinding(
  practice: Practice,
  state: PracticeState,
  said: Said,
  verb: 'find' | 'takeBack',
): PracticeTurned {
  const { stems, sides } = contentOfTokens(practice.lexicon.reader, said.rest);
  const last = recordedPairs(state).at(-1);
  if (verb === 'takeBack' && stems.length === 0 && sides.length === 0 && last !== undefined)
    return takeBackFinding(practice, state, choiceOf(practice, said, verb, [{ id: kindOf(last), score: 1 }]));
  const listed = new Set(recordedPairs(state).map(kindOf));
  const known = knownHouse(practice, state);
  const matches =
    verb === 'find'
      ? withPlaces(
          practice,
          known,
          matchIdeas(practice.lexicon.findings, stems, preference(practice, state, known, sides)),
        )
      : matchIdeas(practice.lexicon.findings, stems).filter((match) => listed.has(match.id));
  const [best] = matches;
  if (verb === 'find' && best && isDenied(practice, said, best.id))
    return { state, parts: [say('practice.find.fine')] };
  const choice = choiceOf(practice, said, verb, meant(matches));
  if (choice.ids.length === 0) return { state, parts: [say(unknown[verb])] };
  return choice.ids.length > 1 ? askWhich(state, choice) : settled[verb](practice, state, choice);
}

/** Reads what was found, and records it. */
export function find(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  return readFinding(practice, state, said, 'find');
}

/** Reads which finding is taken back, among those on the list. */
export function takeBack(practice: Practice, state: PracticeState, said: Said): PracticeTurned {
  return readFinding(practice, state, said, 'takeBack');
}

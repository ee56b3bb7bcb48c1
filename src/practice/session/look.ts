import type { Step } from '../../answers/path.ts';
import { stemsOf, type Token } from '../../answers/reading/tokens.ts';
import { say } from '../../conversation/turned.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { findNamedMember, type NamedMember } from '../reading/places.ts';
import { knownHouse } from './known.ts';
import { observe } from './observe.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

/** The steps that a message means, and where. */
export interface MeantSteps {
  readonly steps: readonly Step[];
  readonly sides: readonly Side[];
  /** The message names a thing of this stop that is not there at this house. */
  readonly absent: boolean;
  /** A stop to which the thing belongs, when it is another than the one named. */
  readonly elsewhere: string | undefined;
  readonly everything: boolean;
}

const most = 6;
/** A thing that is here is meant rather than one that fits the words better by no more than this. */
const farOff = 0.3;

function isEverything(practice: Practice, words: readonly string[]): boolean {
  const all = practice.content.words.verbs.everything.map((phrase) => stemsOf(phrase).join(' '));
  return words.length === 0 || all.includes(words.join(' '));
}

/** All steps about a member, or those of the members named. */
function ofMember(steps: readonly Step[], named: NamedMember, keys: readonly string[]): Step[] {
  const key = named.number === undefined ? undefined : keys[named.number - 1];
  if (named.number !== undefined && key === undefined) return [];
  return steps.filter((step) => step.group === named.group && (key === undefined || step.member === key));
}

/** Which steps of the house a message means; `stop` limits it to one stop. */
export function meantSteps(
  practice: Practice,
  state: PracticeState,
  rest: readonly Token[],
  stop: string | undefined,
): MeantSteps {
  const { path } = knownHouse(practice, state).assessment;
  const { flow } = practice.programme.checklist;
  const { stems, sides } = contentOfTokens(practice.lexicon.reader, rest);
  const here = path.steps.filter((step) => stop === undefined || step.question.stop === stop);
  const nothing = { sides, absent: false, elsewhere: undefined, everything: false };
  if (
    isEverything(
      practice,
      rest.filter((token) => token.kind !== 'mark').map((token) => token.stem),
    ) ||
    stems.length === 0
  )
    return { ...nothing, steps: here, everything: true };
  const named = findNamedMember(flow.groups, rest);
  const members = named ? ofMember(here, named, path.facts.members(named.group)) : [];
  if (named && stems.length <= 2 && members.length > 0) return { ...nothing, steps: members };
  const prefer = (id: string) =>
    practice.programme.checklist.index.questions.get(id)?.stop === state.at ? 0.15 : 0;
  const among = members.length > 0 ? members : here;
  const all = matchIdeas(practice.lexicon.questions, stems, prefer);
  const there = all.filter((match) => among.some((step) => step.question.id === match.id));
  const near = (there[0]?.score ?? 0) > (all[0]?.score ?? 0) - farOff;
  const matches = meant(near ? there : all);
  const steps = among.filter((step) => matches.some((match) => match.id === step.question.id));
  if (steps.length > 0) return { ...nothing, steps: steps.slice(0, most) };
  const stops = matches.map((match) => practice.programme.checklist.index.questions.get(match.id)?.stop);
  const elsewhere = stops.find((one) => one !== undefined && one !== stop);
  return { ...nothing, steps: [], absent: stops.includes(stop), elsewhere };
}

/** The things of the stop that can be seen, by their short names. */
function whatIsHere(practice: Practice, state: PracticeState, steps: readonly Step[]): PracticeTurned {
  const names = [
    ...new Set(
      steps.filter((step) => !practice.askOnly.has(step.question.id)).map((step) => step.question.id),
    ),
  ];
  const things = names.map((id) => ({ text: `question/${id}/short` }));
  return { state, parts: [say('practice.look.here', { things: { list: things } })] };
}

/** Looks at what a message names. */
export function look(practice: Practice, state: PracticeState, rest: readonly Token[]): PracticeTurned {
  if (state.at === undefined) return { state, parts: [say('practice.look.nowhere')] };
  const { steps, sides, absent, elsewhere, everything } = meantSteps(practice, state, rest, state.at);
  if (everything && state.house.level !== 'easy' && sides.length === 0)
    return whatIsHere(practice, state, steps);
  if (steps.length === 0) {
    if (absent || elsewhere === undefined)
      return { state, parts: [say(absent ? 'practice.look.nothing' : 'practice.look.what')] };
    return { state, parts: [say('practice.look.elsewhere', { stop: { text: `stop/${elsewhere}/title` } })] };
  }
  const visible = steps.filter((step) => !practice.askOnly.has(step.question.id));
  if (visible.length === 0) return { state, parts: [say('practice.look.ask-instead')] };
  const seen = visible.map((step) => observe(practice, state, step, sides));
  const parts = seen.flatMap((one) => one.parts);
  if (parts.length === 0) return { state, parts: [say('practice.look.nothing')] };
  return {
    state: withEvents(
      state,
      seen.flatMap((one) => one.events),
    ),
    parts,
  };
}

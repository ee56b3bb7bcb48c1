import type { Step } from '../../answers/path.ts';
import { stemsOf, type Token } from '../../answers/reading/tokens.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { Practice } from '../practice.ts';
import { contentOfTokens } from '../reading/content.ts';
import { matchIdeas, meant } from '../reading/match.ts';
import { findNamedMember, type NamedMember } from '../reading/places.ts';
import { knownHouse } from './known.ts';
import type { PracticeState } from './state.ts';

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

/** Whether a message names nothing in particular: no word at all, or "everything". */
export function isEverything(practice: Practice, rest: readonly Token[]): boolean {
  const words = rest.filter((token) => token.kind !== 'mark').map((token) => token.stem);
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
  if (isEverything(practice, rest) || stems.length === 0)
    return { ...nothing, steps: here, everything: true };
  const named = findNamedMember(flow.groups, rest);
  const members = named ? ofMember(here, named, path.facts.members(named.group)) : [];
  if (named && stems.length <= 2 && members.length > 0) return { ...nothing, steps: members };
  const prefer = (id: string) => {
    const question = practice.programme.checklist.index.questions.get(id);
    if (question?.stop === state.at) return 0.15;
    // "The roof" is that of the house, unless a shed is named or stands before the trainee.
    return question?.of !== undefined && question.of !== named?.group ? -1 : 0;
  };
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

/** The stop at which the thing is that a message names, where it is one thing alone. */
export function stopOfThing(
  practice: Practice,
  state: PracticeState,
  rest: readonly Token[],
): string | undefined {
  const { steps, everything, elsewhere } = meantSteps(practice, state, rest, undefined);
  if (everything) return undefined;
  const stops = new Set(steps.map((step) => step.question.stop));
  return stops.size === 1 ? [...stops][0] : stops.size === 0 ? elsewhere : undefined;
}

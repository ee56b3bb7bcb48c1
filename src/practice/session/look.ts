import type { Step } from '../../answers/path.ts';
import type { Token } from '../../answers/reading/tokens.ts';
import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import { goTo, titledStop } from './go.ts';
import { meantSteps, stopOfThing } from './meant-steps.ts';
import { observe } from './observe.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withEvents } from './turned.ts';

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

/** Looks at what a message names; a part of the house named by itself is gone to first. */
export function look(practice: Practice, state: PracticeState, rest: readonly Token[]): PracticeTurned {
  const stop = titledStop(practice, rest);
  if (stop !== undefined && stop !== state.at) {
    const there = goTo(practice, state, stop);
    if (there.state.at !== stop) return there;
    const seen = lookHere(practice, there.state, stop, rest);
    return { ...seen, parts: [...there.parts, ...seen.parts] };
  }
  if (state.at !== undefined) return lookHere(practice, state, state.at, rest);
  const other = stopOfThing(practice, state, rest);
  return other === undefined
    ? { state, parts: [say('practice.look.nowhere')] }
    : { state, parts: [say('practice.look.elsewhere', { stop: { text: `stop/${other}/title` } })] };
}

function lookHere(
  practice: Practice,
  state: PracticeState,
  at: string,
  rest: readonly Token[],
): PracticeTurned {
  const meant = meantSteps(practice, state, rest, at);
  const whole = meant.steps.length === 0 && titledStop(practice, rest) === at;
  const { steps, sides, absent, elsewhere, everything } = whole ? meantSteps(practice, state, [], at) : meant;
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

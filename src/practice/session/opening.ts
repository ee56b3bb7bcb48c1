import { say } from '../../conversation/turned.ts';
import { makeDebrief } from '../debrief/make-debrief.ts';
import { debriefParts } from '../debrief/say-debrief.ts';
import type { Practice } from '../practice.ts';
import { askSafe, goOn } from './emergency.ts';
import { goTo } from './go.ts';
import type { PracticeState } from './state.ts';
import type { PracticeTurned } from './turned.ts';

function begin(practice: Practice, state: PracticeState): PracticeTurned {
  const { house, part } = state;
  const parts = [
    say('practice.opening.title', { house: house.name }, 'heading'),
    say('practice.opening.what'),
    say('practice.opening.danger', undefined, 'warning'),
    say(`practice.opening.temper/${house.temper}`),
    say('practice.opening.how', undefined, 'quiet'),
  ];
  if (part === undefined) return { state, parts };
  const there = goTo(practice, state, part);
  const only = say('practice.opening.part', { stop: { text: `stop/${part}/title` } });
  return { state: there.state, parts: [...parts, only, ...there.parts] };
}

/** A trainee comes, or comes back. */
export function opening(practice: Practice, state: PracticeState): PracticeTurned {
  switch (state.phase) {
    case 'emergency':
      return askSafe(state);
    case 'paused':
      return goOn(state, 'practice.resumed');
    case 'debriefed':
      return { state, parts: debriefParts(practice, state, makeDebrief(practice, state)) };
    case 'walking':
    case 'firstPage':
      return state.events.length === 0
        ? begin(practice, state)
        : { state, parts: [say('practice.welcome-back')] };
  }
}

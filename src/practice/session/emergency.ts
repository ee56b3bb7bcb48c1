import { leaveParts } from '../../conversation/emergency.ts';
import { newWalk } from '../../conversation/new-walk.ts';
import type { WalkId } from '../../conversation/record.ts';
import { say } from '../../conversation/turned.ts';
import type { Practice } from '../practice.ts';
import type { PracticeState } from './state.ts';
import { type PracticeTurned, withoutPending } from './turned.ts';

/** The trainee's own emergency: everything stops, whatever is played. Their place is not known, so every number is named. */
export function stopForEmergency({ programme }: Practice, state: PracticeState): PracticeTurned {
  const walk = newWalk(programme, 'practice' as WalkId, new Date(state.startedAt));
  const rest = withoutPending(state);
  const before = state.phase === 'emergency' || state.phase === 'paused' ? state.before : state.phase;
  return {
    state: { ...rest, phase: 'emergency', before: before ?? 'walking' },
    parts: [say('practice.emergency.real', undefined, 'emergency'), ...leaveParts(programme, walk)],
  };
}

/** Asked before anything else of a trainee who comes back. */
export function askSafe(state: PracticeState): PracticeTurned {
  return { state, parts: [say('emergency.safe-now', undefined, 'emergency')] };
}

/** Safe again, or back from a pause: the session goes on where it stopped. */
export function goOn(state: PracticeState, phrase: string): PracticeTurned {
  const { before, ...rest } = state;
  return { state: { ...rest, phase: before ?? 'walking' }, parts: [say(phrase)] };
}

import { tokenise } from '../../answers/reading/tokens.ts';
import { say } from '../../conversation/turned.ts';
import { sideNames } from '../../flow/schema/base.ts';
import type { Practice } from '../practice.ts';
import { contentOf } from '../reading/content.ts';
import { findNamedMember } from '../reading/places.ts';
import { giveAdvice } from './advise.ts';
import { giveCautions } from './caution.ts';
import { recordFinding, takeBackFinding } from './find.ts';
import { writeJob } from './first-page.ts';
import { knownHouse } from './known.ts';
import type { PendingChoice, PracticeState } from './state.ts';
import { type PracticeTurned, withoutPending } from './turned.ts';

/** Does what waited, once it is known which. */
export function settle(practice: Practice, state: PracticeState, choice: PendingChoice): PracticeTurned {
  switch (choice.verb) {
    case 'find':
      return recordFinding(practice, state, choice);
    case 'takeBack':
      return takeBackFinding(practice, state, choice);
    case 'advise':
      return state.phase === 'firstPage'
        ? writeJob(state, choice.ids[0] ?? '')
        : giveAdvice(practice, state, choice);
    case 'caution':
      return giveCautions(state, choice.ids);
    case 'look':
      return { state, parts: [] };
  }
}

/** A number, a letter or the id itself picks one of the choices shown. */
export function pickedChoice(text: string, ids: readonly string[]): string | undefined {
  const said = text.trim().toLowerCase();
  const number = /^\d+$/.test(said) ? Number(said) - 1 : /^[a-z]$/.test(said) ? said.charCodeAt(0) - 97 : -1;
  return ids[number] ?? ids.find((id) => id.toLowerCase() === said);
}

/** An answer to "which one": `undefined` when the message says something else. */
export function takeChoice(
  practice: Practice,
  state: PracticeState,
  text: string,
): PracticeTurned | undefined {
  if (state.pending?.kind !== 'choice') return undefined;
  const { choice } = state.pending;
  const picked = pickedChoice(text, choice.ids);
  return picked === undefined
    ? undefined
    : settle(practice, withoutPending(state), { ...choice, ids: [picked] });
}

/** An answer to "where": sides or a member; `undefined` when the message names neither. */
export function takePlace(
  practice: Practice,
  state: PracticeState,
  text: string,
): PracticeTurned | undefined {
  if (state.pending?.kind !== 'place') return undefined;
  const { choice } = state.pending;
  const per = practice.facts.get(choice.ids[0] ?? '')?.finding.per ?? 'side';
  const rest = withoutPending(state);
  const { path } = knownHouse(practice, state).assessment;
  if (per !== 'side') {
    const keys = path.facts.members(per);
    const picked = pickedChoice(text, keys);
    const named = findNamedMember(practice.programme.checklist.flow.groups, tokenise(text.toLowerCase()));
    const number = picked === undefined ? named?.number : keys.indexOf(picked) + 1;
    if (number === undefined) return undefined;
    return settle(practice, rest, { ...choice, member: { group: per, number } });
  }
  const shown = sideNames.filter((side) => path.sides.includes(side));
  const picked = pickedChoice(text, shown);
  const { sides, stems } = contentOf(practice.lexicon.reader, text);
  const named = picked === undefined ? sides : shown.filter((side) => side === picked);
  if (named.length === 0 || (picked === undefined && stems.length > 0)) return undefined;
  return settle(practice, rest, { ...choice, sides: named });
}

/** What waited is given up, since something else was said. */
export function givenUp(state: PracticeState): PracticeTurned {
  return { state: withoutPending(state), parts: [say('practice.given-up', undefined, 'quiet')] };
}

import { say } from '../../conversation/turned.ts';
import { sideNames } from '../../flow/schema/base.ts';
import type { Say } from '../../wording/say.ts';
import type { Practice } from '../practice.ts';
import { knownHouse } from './known.ts';
import { memberValue, somewhere, whereverNeeded } from './say-place.ts';
import type { PendingChoice, PracticeState } from './state.ts';
import { type PracticeTurned, withPending } from './turned.ts';

const most = 6;

/** Any place, so that a finding or job can be named before it is known where. */
function labelOf(verb: PendingChoice['verb'], id: string): Say {
  if (verb === 'caution') return { text: `practice.caution/${id}` };
  return verb === 'advise'
    ? { text: `action/${id}/do`, values: whereverNeeded }
    : { text: `finding/${id}/say`, values: somewhere };
}

/** Asks which of several things is meant. */
export function askWhich(state: PracticeState, choice: PendingChoice): PracticeTurned {
  const ids = choice.ids.slice(0, most);
  const choices = ids.map((id) => ({ id, label: labelOf(choice.verb, id) }));
  return {
    state: withPending(state, { kind: 'choice', choice: { ...choice, ids } }),
    parts: [say('practice.which')],
    choices,
  };
}

/** Asks at which side, or about which member, a thing is. */
export function askWhere(
  practice: Practice,
  state: PracticeState,
  choice: PendingChoice,
  per: string,
): PracticeTurned {
  const { path } = knownHouse(practice, state).assessment;
  const assessment = knownHouse(practice, state).assessment;
  const choices =
    per === 'side'
      ? sideNames
          .filter((side) => path.sides.includes(side))
          .map((side) => ({ id: side, label: { text: `words/side/${side}` } }))
      : path.facts.members(per).map((key) => ({
          id: key,
          label: { text: 'practice.member', values: { member: memberValue(assessment, per, key) } },
        }));
  return {
    state: withPending(state, { kind: 'place', choice }),
    parts: [say(per === 'side' ? 'practice.where.side' : 'practice.where.member')],
    choices,
  };
}

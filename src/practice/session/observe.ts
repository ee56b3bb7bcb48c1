import type { Answer, PlainAnswer } from '../../answers/answer.ts';
import type { Step } from '../../answers/path.ts';
import type { Part } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import type { Side } from '../../flow/schema/base.ts';
import type { Values } from '../../wording/say.ts';
import type { Practice } from '../practice.ts';
import { knownHouse } from './known.ts';
import { memberValue } from './say-place.ts';
import type { PracticeEvent, PracticeState } from './state.ts';

/** What an assessor sees of a step, and what that was. */
export interface Observed {
  readonly parts: readonly Part[];
  readonly events: readonly PracticeEvent[];
}

const keyOf = (answer: PlainAnswer | undefined) =>
  answer?.status === 'given' ? JSON.stringify(answer.value) : 'unknown';

/** Sides with the same answer are told together. */
function groupSides(answer: Answer | undefined, sides: readonly Side[]): [PlainAnswer | undefined, Side[]][] {
  const groups = new Map<string, [PlainAnswer | undefined, Side[]]>();
  for (const side of sides) {
    const one = answer?.status === 'bySide' ? answer.sides[side] : answer;
    const group = groups.get(keyOf(one)) ?? [one, []];
    group[1].push(side);
    groups.set(keyOf(one), group);
  }
  return [...groups.values()];
}

/** The phrase for a look of one option, where the level tells things by their look. */
function sightOf(
  practice: Practice,
  state: PracticeState,
  step: Step,
  answer: PlainAnswer,
): string | undefined {
  const { subtle } = practice.content.house.levels[state.house.level];
  if (!subtle || answer.status !== 'given' || typeof answer.value === 'object') return undefined;
  const id = `practice.sight/${step.question.id}/${answer.value}`;
  return id in practice.content.phrases ? id : undefined;
}

function seenPart(
  practice: Practice,
  state: PracticeState,
  step: Step,
  answer: PlainAnswer | undefined,
  where: Values,
): Part {
  const thing = { text: `question/${step.question.id}/short` };
  const place =
    'side' in where ? 'practice.seen.side' : 'member' in where ? 'practice.seen.member' : 'practice.seen';
  if (answer?.status !== 'given') return say(`${place}.hidden`, { thing, ...where });
  const sight = sightOf(practice, state, step, answer);
  const seen = sight ? { text: sight } : { answer, question: step.question.id };
  return say(place, { thing, ...where, answer: seen });
}

/** Looks at a step: by side only at the sides named, or at all it is asked about. */
export function observe(
  practice: Practice,
  state: PracticeState,
  step: Step,
  sides: readonly Side[],
): Observed {
  const answer = state.house.sheet[step.key];
  const { assessment } = knownHouse(practice, state);
  if (step.sides) {
    const there = sides.length === 0 ? step.sides : step.sides.filter((side) => sides.includes(side));
    if (there.length === 0) return { parts: [], events: [] };
    const parts = groupSides(answer, there).map(([one, group]) =>
      seenPart(practice, state, step, one, { side: { sides: group } }),
    );
    return { parts, events: [{ kind: 'looked', key: step.key, sides: there }] };
  }
  const member =
    step.group === undefined || step.member === undefined
      ? {}
      : { member: memberValue(assessment, step.group, step.member) };
  const plain = answer?.status === 'bySide' ? undefined : answer;
  return {
    parts: [seenPart(practice, state, step, plain, member)],
    events: [{ kind: 'looked', key: step.key, sides: [] }],
  };
}

import { type Assessment, assess } from '../../assess/assess.ts';
import type { Stop } from '../../flow/schema/file.ts';
import { type Pair, pairsOf } from '../key/pairs.ts';
import type { Practice } from '../practice.ts';
import type { PracticeState } from './state.ts';

/** What the program knows of the house that is played. */
export interface KnownHouse {
  readonly assessment: Assessment;
  readonly pairs: ReadonlyMap<string, Pair>;
}

/** A supervisor's own key has the last word on every pair. */
function byKey(pair: Pair, key: readonly string[]): Pair {
  const found = key.includes(pair.id);
  return { ...pair, truth: found ? 'yes' : 'no', observable: pair.observable || found };
}

const known = new WeakMap<object, KnownHouse>();

/** The key of a session's house, worked out once for its answers. */
export function knownHouse(practice: Practice, state: PracticeState): KnownHouse {
  const before = known.get(state.house);
  if (before) return before;
  const { checklist } = practice.programme;
  const assessment = assess(checklist, state.house.sheet);
  const { key } = state.house;
  const all = pairsOf(checklist.index, practice.facts, assessment);
  const pairs = new Map(all.map((pair) => [pair.id, key ? byKey(pair, key) : pair]));
  const house = { assessment, pairs };
  known.set(state.house, house);
  return house;
}

/** The stops with something to ask at this house, in the order of the walk; one where a part is practised alone. */
export function stopsOf(practice: Practice, state: PracticeState): readonly Stop[] {
  const { steps } = knownHouse(practice, state).assessment.path;
  const asked = new Set(steps.map((step) => step.question.stop));
  return practice.programme.checklist.flow.stops.filter(
    (stop) => asked.has(stop.id) && (state.part === undefined || stop.id === state.part),
  );
}

import { type Kappa, kappaOfPairs } from '../agreement/kappa.ts';
import type { Pair } from '../key/pairs.ts';
import type { Practice } from '../practice.ts';
import { type KnownHouse, knownHouse } from '../session/known.ts';
import { type PracticeState, recordedPairs } from '../session/state.ts';
import type { FindingsFound } from './debrief.ts';

/** With one part alone: the findings of that part which need nothing but it and what is told about the house. */
function inScope(practice: Practice, state: PracticeState, pair: Pair): boolean {
  if (state.part === undefined) return true;
  if (pair.stop !== state.part) return false;
  const { questions } = practice.programme.checklist.index;
  const first = practice.programme.checklist.flow.stops[0]?.id;
  const needed = (practice.facts.get(pair.finding)?.questions ?? []).map((id) => questions.get(id)?.stop);
  return needed.every((stop) => stop === state.part || stop === first);
}

/** The pairs that are judged: those that could be observed, and those that were recorded. */
export function judgedPairs(practice: Practice, state: PracticeState): Pair[] {
  const recorded = new Set(recordedPairs(state));
  return [...knownHouse(practice, state).pairs.values()].filter(
    (pair) => recorded.has(pair.id) || (pair.observable && inScope(practice, state, pair)),
  );
}

/** Whether a question of the pair was looked at there, or truly told. */
function wasSeen(practice: Practice, state: PracticeState, known: KnownHouse, pair: Pair): boolean {
  const { place } = pair;
  const ids = new Set(practice.facts.get(pair.finding)?.questions ?? []);
  return state.events.some((event) => {
    if (event.kind !== 'looked' && !(event.kind === 'asked' && event.told)) return false;
    const step = known.assessment.path.byKey.get(event.key);
    if (!step || !ids.has(step.question.id)) return false;
    if (step.group !== undefined && place.group === step.group && step.member !== place.member) return false;
    if (event.kind === 'asked' || place.side === undefined) return true;
    return event.sides.length === 0 || event.sides.includes(place.side);
  });
}

/** What was caught, missed and invented, and the agreement with the key. */
export function findingsFound(
  practice: Practice,
  state: PracticeState,
): { readonly findings: FindingsFound; readonly kappa: Kappa } {
  const recorded = new Set(recordedPairs(state));
  const known = knownHouse(practice, state);
  const judged = judgedPairs(practice, state);
  const certain = judged.filter((pair) => pair.truth !== 'unknown');
  const ids = (keep: (pair: Pair) => boolean) => judged.filter(keep).map((pair) => pair.id);
  const isCaught = (pair: Pair) => recorded.has(pair.id) && pair.truth === 'yes';
  return {
    findings: {
      caught: ids(isCaught),
      missed: ids((pair) => !recorded.has(pair.id) && pair.truth === 'yes'),
      invented: ids((pair) => recorded.has(pair.id) && pair.truth === 'no'),
      unsettled: ids((pair) => recorded.has(pair.id) && pair.truth === 'unknown'),
      unseen: ids((pair) => isCaught(pair) && !wasSeen(practice, state, known, pair)),
    },
    kappa: kappaOfPairs(
      certain.map((pair) => ({ first: recorded.has(pair.id), second: pair.truth === 'yes' })),
    ),
  };
}

import type { FlowIndex } from '../../answers/flow-index.ts';
import type { Path } from '../../answers/path.ts';
import type { Truth } from '../../answers/truth.ts';
import type { Assessment } from '../../assess/assess.ts';
import { type Place, placesOf } from '../../findings/place.ts';
import type { FindingFacts } from './finding-facts.ts';

/** A finding at a side, a member or the house: what an assessor either finds there or does not. */
export interface Pair {
  /** `vents.coarse-high@left` */
  readonly id: string;
  readonly finding: string;
  readonly place: Place;
  readonly stop: string;
  /** What the answers say; unknown where they do not tell. */
  readonly truth: Truth;
  /** Something is there to be looked at: a question of the finding is asked at this place. */
  readonly observable: boolean;
}

function isAsked(index: FlowIndex, path: Path, id: string, place: Place): boolean {
  const question = index.questions.get(id);
  const own = question?.of !== undefined && question.of === place.group;
  const step = path.byKey.get(own ? `${place.group}/${place.member}/${id}` : id);
  return (
    step !== undefined &&
    (place.side === undefined || step.sides === undefined || step.sides.includes(place.side))
  );
}

/** A question that is asked for the place itself, not for the house around it. */
function isLocal(index: FlowIndex, id: string, place: Place): boolean {
  const question = index.questions.get(id);
  if (place.side !== undefined) return question?.by === 'side';
  return place.group === undefined || question?.of === place.group;
}

function isObservable(index: FlowIndex, path: Path, ids: readonly string[], place: Place): boolean {
  const local = ids.filter((id) => isLocal(index, id, place));
  return (local.length > 0 ? local : ids).some((id) => isAsked(index, path, id, place));
}

/** Every finding at every place of a house. */
export function pairsOf(
  index: FlowIndex,
  facts: ReadonlyMap<string, FindingFacts>,
  assessment: Pick<Assessment, 'path' | 'facts'>,
): Pair[] {
  const { path } = assessment;
  return [...facts.values()].flatMap(({ finding, questions, stop }) =>
    placesOf(finding.per, path).map(
      (place): Pair => ({
        id: finding.id + place.suffix,
        finding: finding.id,
        place,
        stop,
        truth: assessment.facts.finding(finding.id, place),
        observable: isObservable(index, path, questions, place),
      }),
    ),
  );
}

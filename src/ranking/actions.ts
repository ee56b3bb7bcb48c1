import type { Facts } from '../answers/condition.ts';
import type { Path } from '../answers/path.ts';
import type { Found } from '../findings/find.ts';
import { type Place, placesOf } from '../findings/place.ts';
import type { ActionRule, Rules } from '../findings/rules.ts';
import type { Action } from '../flow/schema/action.ts';
import type { Lane, Text } from '../flow/schema/base.ts';
import type { ReadyElement } from './readiness.ts';

/** A job at one place that answers findings there. */
export interface Proposal {
  /** `mesh-vents@left` */
  readonly id: string;
  readonly action: Action;
  readonly place: Place;
  readonly lane: Lane;
  /** Why it is not in its usual lane. */
  readonly because: Text | undefined;
  readonly findings: readonly string[];
  /** Position of a ready element -> what is left of its readiness. */
  readonly treats: ReadonlyMap<number, number>;
  /** Shared by jobs of which one is enough at this place. */
  readonly insteadOf: string | undefined;
  /** Ids of proposals that come before it. */
  readonly requires: readonly string[];
  readonly cautions: readonly string[];
  readonly demanded: boolean;
  /**
   * A costly job: by its nature for a trade, and with something to take off. It is advised only while a way in that it
   * lessens still weighs something. A household's own job that this house moves to a trade is not one.
   */
  readonly costly: boolean;
}

/** Whether what is decided at one place bears on a job at another: the same place, or one of them the whole house. */
function meets(job: Place, other: Place): boolean {
  if (job.suffix === '' || job.suffix === other.suffix) return true;
  return other.suffix === '' && job.group === undefined;
}

/** Elements are treated where the job is; only a job for the whole house reaches all sides and members. */
function treatsOf(action: Action, place: Place, byKind: ByKind): Map<number, number> {
  const treats = new Map<number, number>();
  for (const [kind, residual] of Object.entries(action.treats)) {
    for (const { element, position } of byKind.get(kind) ?? []) {
      const { suffix } = element.present.place;
      if (place.suffix !== '' && suffix !== '' && place.suffix !== suffix) continue;
      const left = typeof residual === 'number' ? residual : residual[element.attack];
      if (left !== undefined && left < 1) treats.set(position, left);
    }
  }
  return treats;
}

/** element kind -> where such elements stand in the list */
type ByKind = ReadonlyMap<string, readonly { readonly element: ReadyElement; readonly position: number }[]>;

function indexByKind(elements: readonly ReadyElement[]): ByKind {
  const byKind = new Map<string, { element: ReadyElement; position: number }[]>();
  elements.forEach((element, position) => {
    const list = byKind.get(element.kind);
    if (list) list.push({ element, position });
    else byKind.set(element.kind, [{ element, position }]);
  });
  return byKind;
}

function propose(
  rule: ActionRule,
  place: Place,
  here: readonly Found[],
  facts: Facts,
  byKind: ByKind,
): Proposal {
  const { action } = rule;
  const treats = treatsOf(action, place, byKind);
  const moved = rule.laneWhen.find((one) => one.test(facts, place) === 'yes');
  const extra = rule.cautionsWhen
    .filter((one) => one.test(facts, place) !== 'no')
    .flatMap((one) => one.cautions);
  return {
    id: action.id + place.suffix,
    action,
    place,
    lane: moved?.lane ?? action.lane,
    because: moved?.because,
    findings: here.map((one) => one.id),
    treats,
    insteadOf: action.insteadOf === undefined ? undefined : action.insteadOf + place.suffix,
    requires: [],
    cautions: [...new Set([...action.cautions, ...extra])],
    demanded: rule.demanded?.(facts, place) === 'yes',
    costly: action.lane === 'trade' && treats.size > 0,
  };
}

/** All jobs that answer what was found. A caution whose condition is not known is given. */
export function proposals(
  rules: Rules,
  path: Path,
  facts: Facts,
  found: readonly Found[],
  elements: readonly ReadyElement[],
): Proposal[] {
  const byFinding = new Map<string, Found[]>();
  for (const one of found) byFinding.set(one.finding.id, [...(byFinding.get(one.finding.id) ?? []), one]);
  const byKind = indexByKind(elements);
  const list: Proposal[] = [];
  for (const rule of rules.actions) {
    const answered = rule.action.for.flatMap((id) => byFinding.get(id) ?? []);
    if (answered.length === 0) continue;
    for (const place of placesOf(rule.action.per, path)) {
      const here = answered.filter((one) => meets(place, one.place));
      if (here.length === 0 || (rule.when && rule.when(facts, place) !== 'yes')) continue;
      list.push(propose(rule, place, here, facts, byKind));
    }
  }
  return list.map((one) => ({ ...one, requires: requiredBy(one, list) }));
}

/** A job at a side also waits for a job at what stands there: a wall for the shed in front of it. */
function standsAt(job: Place, other: Place): boolean {
  return job.side !== undefined && other.group !== undefined && other.sides.includes(job.side);
}

function requiredBy(job: Proposal, list: readonly Proposal[]): string[] {
  return list
    .filter((one) => one !== job && job.action.requires.includes(one.action.id))
    .filter((one) => meets(job.place, one.place) || standsAt(job.place, one.place))
    .map((one) => one.id);
}

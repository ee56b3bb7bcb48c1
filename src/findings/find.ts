import type { Facts, Spot } from '../answers/condition.ts';
import type { Path } from '../answers/path.ts';
import { any, type Truth } from '../answers/truth.ts';
import type { Element, Finding } from '../flow/schema/finding.ts';
import { type Place, placesOf } from './place.ts';
import type { Rules } from './rules.ts';

/** A finding at its place. */
export interface Found {
  /** `vents.quarter-mesh@left` */
  readonly id: string;
  readonly finding: Finding;
  readonly place: Place;
}

/** An element that is there, at its place. */
export interface Present {
  /** `zone0.bark@front` */
  readonly id: string;
  readonly element: Element;
  readonly place: Place;
}

/** Named computations for conditions: a value at a spot, or nothing when it cannot be worked out. */
export type Computed = (id: string, spot: Spot) => number | undefined;

/** The facts of a path together with what is found and computed from it. */
export function factsWithFindings(rules: Rules, path: Path, computed: Computed): Facts {
  const known = new Map<string, Truth>();
  const facts: Facts = {
    ...path.facts,
    get sides() {
      return path.sides;
    },
    computed,
    finding: (id, spot) => {
      const rule = rules.findings.get(id);
      if (!rule) return 'unknown';
      const { per } = rule.finding;
      if (per === 'house') return truthAt(id, {}, '');
      if (per === 'side' && spot.side !== undefined) return truthAt(id, { side: spot.side }, `@${spot.side}`);
      if (per === spot.group)
        return truthAt(id, { group: per, member: spot.member ?? '' }, `@${per}/${spot.member}`);
      const places = placesOf(per, path).filter(
        (one) => spot.side === undefined || one.sides.includes(spot.side),
      );
      return any(places, (place) => truthAt(id, place, place.suffix));
    },
  };
  const truthAt = (id: string, spot: Spot, suffix: string): Truth => {
    const key = id + suffix;
    const before = known.get(key);
    if (before !== undefined) return before;
    const truth = rules.findings.get(id)?.when(facts, spot) ?? 'unknown';
    known.set(key, truth);
    return truth;
  };
  return facts;
}

/** All findings of a path: what follows from the answers with certainty. Unknown answers give none. */
export function findAll(rules: Rules, path: Path, facts: Facts): Found[] {
  const found: Found[] = [];
  for (const { finding } of rules.findings.values()) {
    for (const place of placesOf(finding.per, path)) {
      if (facts.finding(finding.id, place) === 'yes')
        found.push({ id: finding.id + place.suffix, finding, place });
    }
  }
  return found;
}

/** All elements that are present, for certain. */
export function presentElements(rules: Rules, path: Path, facts: Facts): Present[] {
  const present: Present[] = [];
  for (const { element, when } of rules.elements) {
    for (const place of placesOf(element.per, path)) {
      if (when(facts, place) === 'yes') present.push({ id: element.id + place.suffix, element, place });
    }
  }
  return present;
}

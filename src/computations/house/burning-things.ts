import type { Spot } from '../../answers/condition.ts';
import { feet } from '../../quantities/index.ts';
import type { NoteId } from '../work-out/notes.ts';
import { assumed, derived, ofLimit, ofMeasure } from './given.ts';
import { chosen, type House, has, limitOf, measured } from './house.ts';
import type { Given } from './house-computation.ts';

/** A thing near a side that may burn, as the answers describe it and the rest taken for granted. */
export interface NearThing {
  readonly height: Given;
  readonly width: Given;
  readonly distance: Given;
  /** Limits that say how far off such a thing belongs. */
  readonly limits: readonly string[];
  readonly notes: readonly NoteId[];
}
export type ThingAt = (house: House, spot: Spot) => NearThing | { readonly question: string } | undefined;

const size = (id: string, inFeet: number): Given => assumed(id, feet(inFeet), 'length');

/** Plants by the wall were measured in height only. */
export const shrubAt: ThingAt = (house, spot) => {
  if (!has(house, 'zone0.plants', ['green', 'dead', 'resinous'], spot)) return undefined;
  const height = ofMeasure(house, 'zone0.plant-height', 'length', spot);
  const distance = ofLimit(house, 'zone0', 'length');
  if (height === undefined) return { question: 'zone0.plant-height' };
  if (distance === undefined || height.value === 0) return undefined;
  const notes: NoteId[] = ['nearer-is-more', 'shrub-as-wide'];
  return { height, width: derived(height.value), distance, limits: ['zone0'], notes };
};

/** A pile by the wall is at most as far off as the first zone reaches; one in the yard at least so far. */
export const firewoodAt: ThingAt = (house, spot) => {
  const near = has(house, 'zone0.things', ['firewood'], spot);
  const distance = ofLimit(house, 'zone0', 'length');
  if (distance === undefined || !(near || has(house, 'zone1.things', ['firewood'], spot))) return undefined;
  return {
    height: size('firewood-height', 4),
    width: size('firewood-width', 8),
    distance,
    limits: ['firewoodAway'],
    notes: ['size-assumed', near ? 'nearer-is-more' : 'at-most-this'],
  };
};

/** What stands on a deck, or is stored under it. */
export const deckAt: ThingAt = (house, spot) => {
  const under =
    has(house, 'zone0.deck-under', ['stored'], {}) && has(house, 'about.deck-sides', ['yes'], spot);
  const distance = ofLimit(house, 'zone0', 'length');
  if (distance === undefined || !(under || has(house, 'zone0.things', ['furniture'], spot))) return undefined;
  return {
    height: size('deck-height', 3),
    width: size('deck-width', 6),
    distance,
    limits: ['zone0'],
    notes: ['size-assumed', 'nearer-is-more'],
  };
};

/** What is left of a fence once the part next to the house does not burn. */
export const fenceAt: ThingAt = (house, spot) => {
  const distance = ofLimit(house, 'fenceFirst', 'length');
  if (distance === undefined || !has(house, 'fences.meets', ['wood', 'vinyl'], spot)) return undefined;
  return {
    height: size('fence-height', 6),
    width: size('fence-width', 3),
    distance,
    limits: ['fenceFirst'],
    notes: ['size-assumed', 'fence-end-on'],
  };
};

const shedSizes: Readonly<Record<string, readonly [height: number, width: number]>> = {
  small: [8, 8],
  medium: [9, 12],
  large: [12, 24],
};

/** An outbuilding, at a spot that names it. */
export const shedAt: ThingAt = (house, spot) => {
  const away = measured(house, 'outbuildings.distance', spot);
  if (away === 'unknown') return { question: 'outbuildings.distance' };
  if (away === 'offPath' || away >= (limitOf(house, 'outbuildingLargeAway') ?? 0)) return undefined;
  const distance = ofMeasure(house, 'outbuildings.distance', 'length', spot);
  const [kind = ''] = chosen(house, 'outbuildings.size', spot);
  const dimensions = shedSizes[kind];
  if (distance === undefined || dimensions === undefined) return { question: 'outbuildings.size' };
  const [height, width] = dimensions;
  return {
    height: size('shed-height', height),
    width: size('shed-width', width),
    distance,
    limits: ['outbuildingMid', kind === 'large' ? 'outbuildingLargeAway' : 'outbuildingAway'],
    notes: ['size-assumed'],
  };
};

/** The next house, while it stands within the widest zone. */
export const nextHouseAt: ThingAt = (house, spot) => {
  const away = measured(house, 'about.next-house', spot);
  if (away === 'unknown') return { question: 'about.next-house' };
  if (away === 'offPath' || away > (limitOf(house, 'zone2') ?? 0)) return undefined;
  const distance = ofMeasure(house, 'about.next-house', 'length', spot);
  if (distance === undefined) return undefined;
  return {
    height: size('house-height', 9),
    width: size('house-width', 30),
    distance,
    limits: ['nextHouseNear', 'nextHouseMid'],
    notes: ['size-assumed'],
  };
};

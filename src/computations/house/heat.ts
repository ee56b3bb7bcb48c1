import type { Spot } from '../../answers/condition.ts';
import {
  deckAt,
  fenceAt,
  firewoodAt,
  type NearThing,
  nextHouseAt,
  shedAt,
  shrubAt,
  type ThingAt,
} from './burning-things.ts';
import type { HouseId } from './computed-ids.ts';
import { ofLimit, plain } from './given.ts';
import { chosen, type House, isUnknown, limitOf } from './house.ts';
import type { Given, HouseComputation, Wanted } from './house-computation.ts';
import { glassAt, type WeakSpot, woodAt } from './weak-spots.ts';

type Thing = 'shrub' | 'firewood' | 'deck' | 'fence' | 'shed' | 'house';
type Spots = (house: House, spot: Spot) => WeakSpot;

/** Distances that practice and that published rules ask for, the longest of each. */
function asked(house: House, { limits }: NearThing) {
  const longest = (ids: readonly string[]): Given | undefined => {
    const [first] = [...ids].sort((a, b) => (limitOf(house, b) ?? 0) - (limitOf(house, a) ?? 0));
    return first === undefined ? undefined : ofLimit(house, first, 'length');
  };
  const customary = limits.filter((id) => house.facts.limit(id)?.limit.source === 'common-practice');
  return { customary: longest(customary), code: longest(limits.filter((id) => !customary.includes(id))) };
}

function heatOn(
  thing: Thing,
  house: House,
  near: ReturnType<ThingAt>,
  weak: () => WeakSpot,
): Wanted | undefined {
  if (near === undefined) return undefined;
  const receiver = weak();
  if (receiver === undefined) return undefined;
  if ('question' in near) return { kind: 'missing', question: near.question };
  if ('question' in receiver) return { kind: 'missing', question: receiver.question };
  return {
    kind: 'inputs',
    inputs: {
      thing: plain(thing),
      height: near.height,
      width: near.width,
      distance: near.distance,
      receiver,
      ...asked(house, near),
    },
    notes: near.notes,
  };
}

/** Heat from a thing that stands at a side. */
const bySide = (thing: Thing, weakSpot: 'glass' | 'wood', at: ThingAt, spots: Spots): HouseComputation => ({
  id: `heat-${thing}-${weakSpot}` as HouseId,
  per: 'side',
  runs: 'heat-from-thing',
  at: (house, spot) => heatOn(thing, house, at(house, spot), () => spots(house, spot)),
});

/** Below a window means that there is glass above the plants; where that is not known, glass counts. */
const glassOverShrub: Spots = (house, spot) => {
  const said = chosen(house, 'zone0.plant-under', spot);
  return said.length === 0 || said.includes('window') ? glassAt(house, spot) : undefined;
};

/** The first weak spot among the sides on which an outbuilding stands, single panes before others. */
const onSidesOf =
  (spots: Spots): Spots =>
  (house, spot) => {
    const sides = house.facts.memberSides(spot.group ?? '', spot.member ?? '');
    if (sides.length === 0)
      return isUnknown(house, 'outbuildings.side', spot) ? { question: 'outbuildings.side' } : undefined;
    const found = sides.map((side) => spots(house, { side })).filter((one) => one !== undefined);
    const weakest = ['window-single', 'window-double', 'window-tempered'];
    const rank = (one: WeakSpot) =>
      one !== undefined && 'value' in one ? weakest.indexOf(String(one.value)) : -1;
    return found.sort((a, b) => rank(a) - rank(b))[0];
  };

const shed = (weakSpot: 'glass' | 'wood', spots: Spots): HouseComputation => ({
  id: `heat-shed-${weakSpot}`,
  per: 'outbuildings',
  runs: 'heat-from-thing',
  at: (house, spot) => heatOn('shed', house, shedAt(house, spot), () => onSidesOf(spots)(house, spot)),
});

/** Heat on glass and on wood from the burnable things near them. */
export const HEAT_OF_HOUSE: readonly HouseComputation[] = [
  bySide('shrub', 'glass', shrubAt, glassOverShrub),
  bySide('shrub', 'wood', shrubAt, woodAt),
  bySide('firewood', 'glass', firewoodAt, glassAt),
  bySide('firewood', 'wood', firewoodAt, woodAt),
  bySide('deck', 'glass', deckAt, glassAt),
  bySide('deck', 'wood', deckAt, woodAt),
  bySide('fence', 'glass', fenceAt, glassAt),
  bySide('fence', 'wood', fenceAt, woodAt),
  shed('glass', glassAt),
  shed('wood', woodAt),
  bySide('house', 'glass', nextHouseAt, glassAt),
  bySide('house', 'wood', nextHouseAt, woodAt),
];

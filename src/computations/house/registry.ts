import { HOUSE_IDS } from './computed-ids.ts';
import { HEAT_OF_HOUSE } from './heat.ts';
import type { HouseComputation } from './house-computation.ts';
import { PLANTS_OF_HOUSE } from './plants.ts';
import { SUPPLIES_OF_HOUSE } from './supplies.ts';
import { VENTS_OF_HOUSE } from './vents.ts';
import { ZONES_OF_HOUSE } from './zones.ts';

const ALL = [
  ...VENTS_OF_HOUSE,
  ...PLANTS_OF_HOUSE,
  ...HEAT_OF_HOUSE,
  ...ZONES_OF_HOUSE,
  ...SUPPLIES_OF_HOUSE,
];

/** Every computation of a house by its id, in the order of the ids. */
export const HOUSE_COMPUTATIONS: ReadonlyMap<string, HouseComputation> = new Map(
  HOUSE_IDS.flatMap((id) => ALL.filter((one) => one.id === id).map((one) => [id, one] as const)),
);

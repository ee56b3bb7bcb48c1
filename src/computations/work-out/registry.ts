import type { Computation } from './computation.ts';
import { HEAT_COMPUTATIONS } from './heat.ts';
import { THING_COMPUTATIONS } from './heat-from-thing.ts';
import { FINISH_COMPUTATIONS } from './paint-and-fence.ts';
import { PLANT_COMPUTATIONS } from './plants.ts';
import { SCREEN_COMPUTATIONS } from './screens.ts';
import { SEALING_COMPUTATIONS } from './sealing.ts';
import { SUPPLY_COMPUTATIONS } from './supplies.ts';
import { TREE_COMPUTATIONS } from './trees.ts';
import { VENT_REMESH } from './vent-remesh.ts';
import { VENT_COMPUTATIONS } from './vents.ts';
import { ZONE_COMPUTATIONS } from './zones.ts';

/** Every computation that can be run alone, in the order in which help lists them. */
export const COMPUTATIONS: readonly Computation[] = [
  ...VENT_COMPUTATIONS,
  VENT_REMESH,
  ...SCREEN_COMPUTATIONS,
  ...HEAT_COMPUTATIONS,
  ...THING_COMPUTATIONS,
  ...PLANT_COMPUTATIONS,
  ...TREE_COMPUTATIONS,
  ...ZONE_COMPUTATIONS,
  ...SUPPLY_COMPUTATIONS,
  ...SEALING_COMPUTATIONS,
  ...FINISH_COMPUTATIONS,
];

/** The computation with an id, or undefined. */
export const findComputation = (id: string): Computation | undefined =>
  COMPUTATIONS.find((computation) => computation.id === id);

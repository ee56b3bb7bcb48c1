import { feet } from '../../quantities/index.ts';
import type { LimbUpRule } from '../formulas/limb-up.ts';
import type { SlopeClass } from '../formulas/plant-spacing.ts';

/** Gaps between crowns and shrubs by slope. Source: uc-anr-spacing; status read. A place may set its own. */
export const SPACING_CLASSES: readonly SlopeClass[] = [
  { fromPercent: 0, crownGap: feet(10), shrubGapHeights: 2 },
  { fromPercent: 20, crownGap: feet(20), shrubGapHeights: 4 },
  { fromPercent: 40, crownGap: feet(30), shrubGapHeights: 6 },
];

/** Clear height over a shrub, in heights of the shrub. Source: uc-anr-spacing; status read. */
export const CLEAR_SHRUB_HEIGHTS = 3;

/** Lowest branch: 6 ft on trees from 18 ft, else a third of the tree. Source: uc-anr-limbing; status read. */
export const LIMB_UP_RULE: LimbUpRule = { tallFrom: feet(18), tallClear: feet(6), smallPart: 1 / 3 };

/** Most of a mature tree's foliage to take in a season, a ceiling. Source: ansi-a300-1995, superseded; status read. */
export const MOST_PRUNED_PART = 0.25;

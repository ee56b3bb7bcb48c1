import { type Metres, metres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/** A place's rule for the lowest branch: from `tallFrom` on it is `tallClear`, below a part of the tree. */
export type LimbUpRule = {
  readonly tallFrom: Metres;
  readonly tallClear: Metres;
  readonly smallPart: number;
};

/**
 * Height to which the lowest branches are taken off. Source: uc-anr-limbing (6 ft where the tree is 18 ft or
 * taller, else the lowest third). Range: trees to 120 m.
 */
export function limbUpHeight(treeHeight: Metres, rule: LimbUpRule): Metres | Outside {
  if (!within(treeHeight, 0, 120)) return outside('treeHeight', '0 to 120 m');
  // A billionth of slack: 18 ft typed in metres is still a tall tree.
  const tall = treeHeight >= rule.tallFrom * (1 - 1e-9);
  return tall ? rule.tallClear : metres(treeHeight * rule.smallPart);
}

import type { Metres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';
import { wholeCount } from './whole-count.ts';

/** Part of the living crown that goes when the lowest branch is raised, and the seasons it takes. */
export type Pruning = { readonly crownPart: number; readonly seasons: number };

/**
 * Part of the crown's height removed by raising the lowest branch, and the least number of seasons when each takes
 * at most `mostPart` of what is left. Source: ansi-a300-1995 (a quarter of the foliage in a season, a ceiling);
 * foliage counted evenly over the crown's height is judgement. Range: branch heights below the tree's top.
 */
export function pruningSeasons(
  treeHeight: Metres,
  branchNow: Metres,
  branchThen: Metres,
  mostPart: number,
): Pruning | Outside {
  if (!within(treeHeight, 0.1, 120)) return outside('treeHeight', '0.1 to 120 m');
  if (!(branchNow >= 0 && branchNow < treeHeight))
    return outside('branchNow', 'from the ground to below the top');
  if (!(branchThen >= 0 && branchThen < treeHeight))
    return outside('branchThen', 'from the ground to below the top');
  if (!within(mostPart, 0.01, 0.5)) return outside('mostPart', '0.01 to 0.5');
  if (branchThen <= branchNow) return { crownPart: 0, seasons: 0 };
  const left = (treeHeight - branchThen) / (treeHeight - branchNow);
  return { crownPart: 1 - left, seasons: wholeCount(Math.log(left) / Math.log(1 - mostPart)) };
}

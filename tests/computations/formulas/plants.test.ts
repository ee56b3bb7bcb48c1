import { describe, expect, it } from 'vitest';
import { limbUpHeight } from '../../../src/computations/formulas/limb-up.ts';
import {
  clearanceOverShrub,
  shrubGap,
  slopeClassOf,
} from '../../../src/computations/formulas/plant-spacing.ts';
import { pruningSeasons } from '../../../src/computations/formulas/pruning-seasons.ts';
import { LIMB_UP_RULE, SPACING_CLASSES } from '../../../src/computations/tables/plant-rules.ts';
import { feet, fromBase, metres, percent } from '../../../src/quantities/index.ts';

const classAt = (slope: number) => {
  const found = slopeClassOf(percent(slope), SPACING_CLASSES);
  if ('kind' in found) throw new Error('not covered');
  return found;
};

describe('spacing by slope', () => {
  /** UC ANR, same numbers as the State guidelines (read and recomputed). */
  it.each([
    [0, 10],
    [10, 10],
    [19.9, 10],
    [30, 20],
    [45, 30],
  ])('leaves at a slope of %f %% crown gaps of %i ft', (slope, gapFeet) => {
    expect(fromBase(classAt(slope).slopeClass.crownGap, 'ft')).toBeCloseTo(gapFeet, 9);
  });

  it.each([
    [4, 10, 8],
    [4, 30, 16],
    [4, 50, 24],
  ])('leaves beside a shrub of %i ft on %i %% a gap of %i ft', (height, slope, gapFeet) => {
    expect(fromBase(shrubGap(feet(height), classAt(slope).slopeClass) as number, 'ft')).toBeCloseTo(
      gapFeet,
      9,
    );
  });

  it.each([
    [20, 20],
    [40, 30],
  ])('takes the boundary of %i %% at the steeper class and says so', (slope, gapFeet) => {
    expect(classAt(slope).onBoundary).toBe(true);
    expect(fromBase(classAt(slope).slopeClass.crownGap, 'ft')).toBeCloseTo(gapFeet, 9);
    expect(classAt(slope - 1e-12).onBoundary).toBe(true);
    expect(classAt(slope - 0.01).onBoundary).toBe(false);
  });

  it('asks 15 ft clear over a 5 ft shrub, so that the branch is 20 ft up', () => {
    // UC (read and recomputed).
    const found = clearanceOverShrub(feet(5), 3);
    if ('kind' in found) throw new Error('not covered');
    expect(fromBase(found.clear, 'ft')).toBeCloseTo(15, 9);
    expect(fromBase(found.branchAboveGround, 'ft')).toBeCloseTo(20, 9);
  });

  it('refuses slopes and heights that are none', () => {
    expect(slopeClassOf(percent(-1), SPACING_CLASSES)).toMatchObject({ kind: 'outside', field: 'slope' });
    expect(shrubGap(metres(Number.NaN), classAt(0).slopeClass)).toMatchObject({ field: 'shrubHeight' });
    expect(clearanceOverShrub(metres(1), 0)).toMatchObject({ field: 'heights' });
  });
});

describe('limbUpHeight', () => {
  /** UC (read): 6 ft where the tree is 18 ft or taller, else the lowest third. */
  it.each([
    [40, 6],
    [18, 6],
    [17.9, 17.9 / 3],
    [9, 3],
  ])('takes branches of a tree of %f ft off to %f ft', (tree, branch) => {
    expect(fromBase(limbUpHeight(feet(tree), LIMB_UP_RULE) as number, 'ft')).toBeCloseTo(branch, 9);
  });
});

describe('pruningSeasons', () => {
  it.each([
    ['a quarter in one season', 20, 0, 5, 0.25, 1],
    ['a third in two', 18, 0, 6, 1 / 3, 2],
    ['nothing when the branch is high enough', 40, 8, 6, 0, 0],
  ])('takes %s', (_, tree, now, then, part, seasons) => {
    const found = pruningSeasons(feet(tree), feet(now), feet(then), 0.25);
    expect(found).toMatchObject({ seasons });
    expect('crownPart' in found && found.crownPart).toBeCloseTo(part, 9);
  });

  it('refuses a branch above the top of the tree', () => {
    expect(pruningSeasons(feet(10), feet(0), feet(20), 0.25)).toMatchObject({
      kind: 'outside',
      field: 'branchThen',
    });
  });
});

import type { Spot } from '../../answers/condition.ts';
import { metres } from '../../quantities/index.ts';
import { limbUpHeight } from '../formulas/limb-up.ts';
import { LIMB_UP_RULE } from '../tables/plant-rules.ts';
import type { ResultValue } from '../work-out/computation.ts';
import { lengthValue } from '../work-out/result-values.ts';
import { assumed, ofAnswer, ofLimit, ofMeasure } from './given.ts';
import { type House, has, isUnknown, limitOf, measured } from './house.ts';
import type { Given, HouseComputation, HouseInput, Wanted } from './house-computation.ts';

const missing = (question: string): Wanted => ({ kind: 'missing', question });

/** How much is there, and how much of what is wanted is missing. */
const against =
  (wanted: string, given: number) =>
  (value: (id: string) => number): readonly ResultValue[] => [
    lengthValue('given', 'as it is', given),
    lengthValue('short', 'missing', Math.max(0, value(wanted) - given)),
  ];

const answerInput = (id: string, value: number): HouseInput => ({
  id,
  from: 'answer',
  dimension: 'length',
  value,
});

/** What a class of slope asks for, by the limits of the place. */
type GapAt = (slope: 'Gentle' | 'Steep' | 'VerySteep') => number | undefined;

/**
 * The slope to work with. Where it is not known the gentlest asks least and the steepest most: either may settle
 * whether a gap is too small; if neither does, the slope is missing.
 */
function slopeFor(house: House, given: number, gapAt: GapAt): Given | undefined {
  const known = ofMeasure(house, 'about.slope', 'slope');
  if (known !== undefined) return known;
  if (given < (gapAt('Gentle') ?? 0)) return assumed('gentle-slope', 0, 'slope');
  const steepest = limitOf(house, 'slopeVerySteep') ?? 0;
  return given >= (gapAt('VerySteep') ?? Number.POSITIVE_INFINITY)
    ? assumed('steep-slope', steepest, 'slope')
    : undefined;
}

const classes = (house: House) => ({
  middleFrom: ofLimit(house, 'slopeSteep', 'slope'),
  steepFrom: ofLimit(house, 'slopeVerySteep', 'slope'),
});

const slopeSpread: HouseComputation = {
  id: 'slope-spread',
  per: 'house',
  runs: 'spread-uphill',
  at: (house) => {
    const slope = measured(house, 'about.slope');
    if (typeof slope !== 'number' || slope === 0) return undefined;
    return { kind: 'inputs', inputs: { slope: ofAnswer('about.slope', slope, 'slope') } };
  },
};

const crownGap: HouseComputation = {
  id: 'crown-gap',
  per: 'house',
  runs: 'crown-gap',
  at: (house) => {
    const given = measured(house, 'zone1.crown-gap');
    if (given === 'offPath') return undefined;
    if (given === 'unknown') return missing('zone1.crown-gap');
    const slope = slopeFor(house, given, (name) => limitOf(house, `crownGap${name}`));
    if (slope === undefined) return missing('about.slope');
    return {
      kind: 'inputs',
      inputs: {
        slope,
        ...classes(house),
        'gap-flat': ofLimit(house, 'crownGapGentle', 'length'),
        'gap-middle': ofLimit(house, 'crownGapSteep', 'length'),
        'gap-steep': ofLimit(house, 'crownGapVerySteep', 'length'),
      },
      beside: [answerInput('zone1.crown-gap', given)],
      also: against('gap', given),
    };
  },
};

const shrubGap: HouseComputation = {
  id: 'shrub-gap',
  per: 'house',
  runs: 'shrub-gap',
  at: (house) => {
    const given = measured(house, 'zone1.shrub-gap');
    if (given === 'offPath') return undefined;
    const height = measured(house, 'zone1.shrub-height');
    if (typeof height !== 'number') return missing('zone1.shrub-height');
    if (given === 'unknown') return missing('zone1.shrub-gap');
    const slope = slopeFor(house, given, (name) => height * (limitOf(house, `shrubGap${name}`) ?? 0));
    if (slope === undefined) return missing('about.slope');
    return {
      kind: 'inputs',
      inputs: {
        slope,
        shrubHeight: ofAnswer('zone1.shrub-height', height, 'length'),
        ...classes(house),
        'heights-flat': ofLimit(house, 'shrubGapGentle', 'count'),
        'heights-middle': ofLimit(house, 'shrubGapSteep', 'count'),
        'heights-steep': ofLimit(house, 'shrubGapVerySteep', 'count'),
      },
      beside: [answerInput('zone1.shrub-gap', given)],
      also: against('gap', given),
    };
  },
};

const limbRule = (house: House) => ({
  tallFrom: ofLimit(house, 'tallTree', 'length'),
  tallClear: ofLimit(house, 'lowestBranch', 'length'),
});

/** Height and lowest branch of a living tree, or the question that is open. */
function treeAt(house: House, spot: Spot): { height: number; branch: number } | Wanted | undefined {
  const [height, branch] = [
    measured(house, 'trees.height', spot),
    measured(house, 'trees.lowest-branch', spot),
  ];
  if (height === 'offPath' || branch === 'offPath') return undefined;
  if (height === 'unknown') return missing('trees.height');
  return branch === 'unknown' ? missing('trees.lowest-branch') : { height, branch };
}

const limbUp: HouseComputation = {
  id: 'limb-up',
  per: 'trees',
  runs: 'limb-up',
  at: (house, spot) => {
    const tree = treeAt(house, spot);
    if (tree === undefined || 'kind' in tree) return tree;
    return {
      kind: 'inputs',
      inputs: { treeHeight: ofAnswer('trees.height', tree.height, 'length'), ...limbRule(house) },
      beside: [answerInput('trees.lowest-branch', tree.branch)],
      also: against('branchHeight', tree.branch),
    };
  },
};

/** Where the lowest branch is high enough already there is nothing to prune. */
function isHighEnough(house: House, height: number, branch: number): boolean {
  const wanted = limbUpHeight(metres(height), {
    tallFrom: metres(limitOf(house, 'tallTree') ?? LIMB_UP_RULE.tallFrom),
    tallClear: metres(limitOf(house, 'lowestBranch') ?? LIMB_UP_RULE.tallClear),
    smallPart: LIMB_UP_RULE.smallPart,
  });
  return typeof wanted !== 'number' || branch >= wanted;
}

const limbSeasons: HouseComputation = {
  id: 'limb-seasons',
  per: 'trees',
  runs: 'pruning-seasons',
  at: (house, spot) => {
    const tree = treeAt(house, spot);
    if (tree === undefined || 'kind' in tree) return undefined;
    if (isHighEnough(house, tree.height, tree.branch)) return undefined;
    return {
      kind: 'inputs',
      inputs: {
        treeHeight: ofAnswer('trees.height', tree.height, 'length'),
        ...limbRule(house),
        branchNow: ofAnswer('trees.lowest-branch', tree.branch, 'length'),
        mostPart: ofLimit(house, 'pruneMost', 'fraction', 0.01),
      },
    };
  },
};

/** Shrubs under a tree were not measured one by one: those of the yard stand for them, else those by the wall. */
function shrubHeight(house: House, spot: Spot): Given | undefined {
  const yard = ofMeasure(house, 'zone1.shrub-height', 'length');
  if (yard !== undefined && yard.value !== 0) return yard;
  const sides = house.facts.memberSides(spot.group ?? '', spot.member ?? '');
  const wall = sides.flatMap((side) => ofMeasure(house, 'zone0.plant-height', 'length', { side }) ?? []);
  return wall.sort((a, b) => Number(b.value) - Number(a.value))[0];
}

const shrubUnderTree: HouseComputation = {
  id: 'shrub-under-tree',
  per: 'trees',
  runs: 'clearance-over-shrub',
  at: (house, spot) => {
    if (!has(house, 'trees.under', ['shrubs'], spot)) return undefined;
    const shrub = shrubHeight(house, spot);
    if (shrub === undefined)
      return isUnknown(house, 'zone1.shrub-height') ? missing('zone1.shrub-height') : undefined;
    const branch = measured(house, 'trees.lowest-branch', spot);
    if (typeof branch !== 'number') return branch === 'unknown' ? missing('trees.lowest-branch') : undefined;
    return {
      kind: 'inputs',
      inputs: {
        shrubHeight: shrub,
        heights: ofLimit(house, 'shrubUnderTree', 'count'),
        treeHeight: ofMeasure(house, 'trees.height', 'length', spot),
      },
      beside: [answerInput('trees.lowest-branch', branch)],
      also: against('branchAboveGround', branch),
      notes: ['shrub-of-the-yard'],
    };
  },
};

/** Slope, gaps and branches, by the limits of the place. */
export const PLANTS_OF_HOUSE: readonly HouseComputation[] = [
  slopeSpread,
  crownGap,
  shrubGap,
  limbUp,
  limbSeasons,
  shrubUnderTree,
];

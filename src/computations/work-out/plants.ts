import { metres, percent, slopeDegrees, slopeFromRise } from '../../quantities/index.ts';
import { type Outside, outside } from '../formulas/outside.ts';
import {
  clearanceOverShrub,
  type SlopeClass,
  type SlopeClassFound,
  shrubGap,
  slopeClassOf,
} from '../formulas/plant-spacing.ts';
import { spreadUphill } from '../formulas/spread-on-slope.ts';
import { CLEAR_SHRUB_HEIGHTS, SPACING_CLASSES } from '../tables/plant-rules.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { countInput, lengthInput, slopeInput } from './input-definitions.ts';
import { angleValue, countValue, lengthValue, slopeValue } from './result-values.ts';

const slope = slopeInput('slope', 'slope of the ground', [0, 200]);

const slopeFromRiseAndRun = defineComputation({
  id: 'slope',
  title: 'Slope in percent and degrees from rise and run',
  group: 'plants',
  inputs: [
    lengthInput('rise', 'how far it rises', [0, 1000]),
    lengthInput('run', 'in how far, level', [0.01, 1000]),
  ],
  work: (values) => {
    const steepness = slopeFromRise(values.number('rise'), values.number('run'));
    if (steepness > 1000) return outside('rise', 'a rise of at most ten times the run');
    return {
      values: [
        slopeValue('percent', 'slope in percent', steepness),
        angleValue('degrees', 'slope in degrees', slopeDegrees(steepness)),
      ],
      sources: ['arithmetic'],
    };
  },
});

const [flat, middle, steep] = SPACING_CLASSES as readonly [SlopeClass, SlopeClass, SlopeClass];

const boundaries = [
  slopeInput('middleFrom', 'slope from which the middle class holds', [1, 200], {
    default: middle.fromPercent,
  }),
  slopeInput('steepFrom', 'slope from which the steep class holds', [1, 200], { default: steep.fromPercent }),
];

function findClass(values: Values): SlopeClassFound | Outside {
  const [middleFrom, steepFrom] = [values.number('middleFrom'), values.number('steepFrom')];
  if (middleFrom >= steepFrom) return outside('steepFrom', 'a slope above the one of the middle class');
  const gap = (id: string, row: SlopeClass) => metres(values.maybe(`gap-${id}`) ?? row.crownGap);
  const heights = (id: string, row: SlopeClass) => values.maybe(`heights-${id}`) ?? row.shrubGapHeights;
  const row = (id: string, base: SlopeClass, fromPercent: number): SlopeClass => ({
    fromPercent,
    crownGap: gap(id, base),
    shrubGapHeights: heights(id, base),
  });
  return slopeClassOf(percent(values.number('slope')), [
    row('flat', flat, 0),
    row('middle', middle, middleFrom),
    row('steep', steep, steepFrom),
  ]);
}

const crownGap = defineComputation({
  id: 'crown-gap',
  title: 'Gap to leave between tree crowns on a slope',
  group: 'plants',
  inputs: [
    slope,
    ...boundaries,
    lengthInput('gap-flat', 'gap on gentle ground', [0, 30], { default: flat.crownGap }),
    lengthInput('gap-middle', 'gap on a middling slope', [0, 30], { default: middle.crownGap }),
    lengthInput('gap-steep', 'gap on a steep slope', [0, 30], { default: steep.crownGap }),
  ],
  work: (values) =>
    whenCovered(
      [findClass(values)],
      ({ slopeClass, onBoundary }): Worked => ({
        values: [lengthValue('gap', 'gap from crown to crown', slopeClass.crownGap)],
        sources: ['uc-anr-spacing'],
        notes: onBoundary ? ['edge-to-edge', 'boundary-steeper'] : ['edge-to-edge'],
      }),
    ),
});

const shrubGapOnSlope = defineComputation({
  id: 'shrub-gap',
  title: 'Gap to leave between shrubs on a slope',
  group: 'plants',
  inputs: [
    slope,
    lengthInput('shrubHeight', 'height of the shrubs', [0, 10]),
    ...boundaries,
    countInput('heights-flat', 'gap on gentle ground, in heights of the shrub', [0, 20], {
      default: flat.shrubGapHeights,
    }),
    countInput('heights-middle', 'the same on a middling slope', [0, 20], {
      default: middle.shrubGapHeights,
    }),
    countInput('heights-steep', 'the same on a steep slope', [0, 20], { default: steep.shrubGapHeights }),
  ],
  work: (values) =>
    whenCovered([findClass(values)], ({ slopeClass, onBoundary }): Worked | Outside =>
      whenCovered(
        [shrubGap(metres(values.number('shrubHeight')), slopeClass)],
        (gap): Worked => ({
          values: [lengthValue('gap', 'gap from shrub to shrub', gap)],
          sources: ['uc-anr-spacing'],
          notes: onBoundary ? ['edge-to-edge', 'boundary-steeper'] : ['edge-to-edge'],
        }),
      ),
    ),
});

const clearance = defineComputation({
  id: 'clearance-over-shrub',
  title: 'Clear height from a shrub to the branches above it',
  group: 'plants',
  inputs: [
    lengthInput('shrubHeight', 'height of the shrub', [0, 10]),
    countInput('heights', 'clear height, in heights of the shrub', [1, 10], { default: CLEAR_SHRUB_HEIGHTS }),
    lengthInput('treeHeight', 'height of the tree above it', [0.1, 120], { optional: true, unsafe: 'low' }),
  ],
  work: (values) => {
    const found = clearanceOverShrub(metres(values.number('shrubHeight')), values.number('heights'));
    return whenCovered([found], ({ clear, branchAboveGround }): Worked => {
      const tree = values.maybe('treeHeight');
      const tooHigh = tree !== undefined && branchAboveGround > tree / 3;
      return {
        values: [
          lengthValue('clear', 'clear height over the shrub', clear),
          lengthValue('branchAboveGround', 'height of the lowest branch above the ground', branchAboveGround),
        ],
        sources: ['uc-anr-spacing'],
        notes: tooHigh ? ['shrub-usually-goes', 'no-more-than-quarter'] : ['no-more-than-quarter'],
      };
    });
  },
});

const spread = defineComputation({
  id: 'spread-uphill',
  title: 'How many times faster a fire runs uphill than on the flat',
  group: 'plants',
  inputs: [slopeInput('slope', 'slope of the ground below the house', [0, 100 * Math.tan(Math.PI / 6)])],
  work: (values) =>
    whenCovered(
      [spreadUphill(percent(values.number('slope')))],
      (factor): Worked => ({
        values: [countValue('timesFaster', 'times the speed on the flat', factor)],
        sources: ['as-3959-slope'],
        notes: ['upslope-only'],
      }),
    ),
});

/** Computations about slope and spacing. */
export const PLANT_COMPUTATIONS: readonly Computation[] = [
  slopeFromRiseAndRun,
  crownGap,
  shrubGapOnSlope,
  clearance,
  spread,
];

import { metres } from '../../quantities/index.ts';
import { limbUpHeight } from '../formulas/limb-up.ts';
import type { Outside } from '../formulas/outside.ts';
import { pruningSeasons } from '../formulas/pruning-seasons.ts';
import { LIMB_UP_RULE, MOST_PRUNED_PART } from '../tables/plant-rules.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { fractionInput, lengthInput } from './input-definitions.ts';
import { countValue, fractionValue, lengthValue } from './result-values.ts';

const treeHeight = lengthInput('treeHeight', 'height of the tree', [0.1, 120], { unsafe: 'low' });

const limbRule = [
  lengthInput('tallFrom', 'height from which a tree counts as tall', [0.1, 120], {
    default: LIMB_UP_RULE.tallFrom,
  }),
  lengthInput('tallClear', 'lowest branch of a tall tree', [0, 30], { default: LIMB_UP_RULE.tallClear }),
  fractionInput('smallPart', 'lowest branch of a small tree, as part of its height', [0, 0.5], {
    default: LIMB_UP_RULE.smallPart,
  }),
];

const limbHeight = (values: Values) =>
  limbUpHeight(metres(values.number('treeHeight')), {
    tallFrom: metres(values.number('tallFrom')),
    tallClear: metres(values.number('tallClear')),
    smallPart: values.number('smallPart'),
  });

const limbUp = defineComputation({
  id: 'limb-up',
  title: 'Height to which the lowest branches of a tree come off',
  group: 'plants',
  inputs: [treeHeight, ...limbRule],
  work: (values) =>
    whenCovered(
      [limbHeight(values)],
      (height): Worked => ({
        values: [lengthValue('branchHeight', 'height of the lowest branch', height)],
        sources: ['uc-anr-limbing'],
        notes: ['no-more-than-quarter'],
      }),
    ),
});

const pruning = defineComputation({
  id: 'pruning-seasons',
  title: 'Seasons it takes to raise the lowest branch of a tree',
  group: 'plants',
  inputs: [
    treeHeight,
    ...limbRule,
    lengthInput('branchNow', 'height of the lowest branch now', [0, 60], { unsafe: 'low' }),
    lengthInput('branchThen', 'height wanted; by the rule unless said', [0, 60], { optional: true }),
    fractionInput('mostPart', 'most of the foliage to take in a season', [0.01, 0.5], {
      default: MOST_PRUNED_PART,
    }),
  ],
  work: (values) =>
    whenCovered([limbHeight(values)], (byRule): Worked | Outside => {
      const then = metres(values.maybe('branchThen') ?? byRule);
      const [tree, now] = [metres(values.number('treeHeight')), metres(values.number('branchNow'))];
      return whenCovered(
        [pruningSeasons(tree, now, then, values.number('mostPart'))],
        (found): Worked => ({
          values: [
            lengthValue('branchThen', 'height of the lowest branch then', Math.max(now, then)),
            fractionValue('crownPart', 'part of the crown that goes', found.crownPart),
            countValue('seasons', 'seasons at least', found.seasons),
          ],
          sources: ['uc-anr-limbing', 'ansi-a300-1995'],
          notes: ['no-more-than-quarter', 'rounded-up'],
        }),
      );
    }),
});

/** Computations about limbing and pruning trees. */
export const TREE_COMPUTATIONS: readonly Computation[] = [limbUp, pruning];

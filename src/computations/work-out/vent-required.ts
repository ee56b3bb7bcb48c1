import { type SquareMetres, squareMetres } from '../../quantities/index.ts';
import { requiredNetFreeArea } from '../formulas/net-free-area.ts';
import type { Outside } from '../formulas/outside.ts';
import { type VentRatioRule, ventRatio } from '../formulas/vent-ratio.ts';
import { ATTIC_RULE_BEFORE_2015, ATTIC_RULE_SINCE_2015, UNDER_FLOOR_RULE } from '../tables/vent-ratios.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { areaInput, choiceInput, countInput, yesNoInput } from './input-definitions.ts';
import { areaValue, countValue } from './result-values.ts';

const RULES = [
  {
    id: 'attic-since-2015',
    label: 'attic, model code since 2015: both conditions',
    rule: ATTIC_RULE_SINCE_2015,
  },
  {
    id: 'attic-before-2015',
    label: 'attic, model code before 2015: either condition',
    rule: ATTIC_RULE_BEFORE_2015,
  },
  { id: 'under-floor', label: 'under-floor space: ground vapour retarder', rule: UNDER_FLOOR_RULE },
] as const;

/** Inputs about the space and the rule for its vents. */
export const ratioInputs = [
  areaInput('ventedArea', 'floor area of the attic or under-floor space', [0, 10_000]),
  choiceInput('rule', 'which rule holds', RULES, 'attic-since-2015'),
  countInput('base', 'area for each unit of net free area, when the place has its own', [50, 3000], {
    optional: true,
    unsafe: 'low',
  }),
  countInput('reduced', 'the same with the conditions met, when the place has its own', [50, 3000], {
    optional: true,
    unsafe: 'low',
  }),
  yesNoInput('retarder', 'there is a vapour retarder on the warm side, or on the ground under a floor'),
  yesNoInput('balanced', 'upper and lower vents are in balance (not asked under a floor)'),
];

/** The ratio that holds and the net free area it asks for. */
export function neededArea(values: Values): { ratio: number; needed: SquareMetres | Outside } {
  const chosen = RULES.find(({ id }) => id === values.choice('rule')) ?? RULES[0];
  const rule: VentRatioRule = {
    base: values.maybe('base') ?? chosen.rule.base,
    reduced: values.maybe('reduced') ?? chosen.rule.reduced,
    needs: chosen.rule.needs,
  };
  const retarder = values.choice('retarder') === 'yes';
  const balanced = values.choice('balanced') === 'yes';
  const ratio = ventRatio(rule, chosen.id === 'under-floor' ? [retarder] : [retarder, balanced]);
  return { ratio, needed: requiredNetFreeArea(squareMetres(values.number('ventedArea')), ratio) };
}

/** Net free area that a space needs. */
export const ventRequired = defineComputation({
  id: 'vent-required',
  title: 'Net free area that an attic or under-floor space needs',
  group: 'vents',
  inputs: ratioInputs,
  work: (values) => {
    const { ratio, needed } = neededArea(values);
    return whenCovered(
      [needed],
      (area): Worked => ({
        values: [
          areaValue('netFreeArea', 'net free area needed', area),
          areaValue('eachHalf', 'half of it, high and low', area / 2),
          countValue('ratio', 'area for each unit of net free area', ratio),
        ],
        sources: ['irc-r806', 'irc-r408'],
        notes: ['half-high-half-low', 'local-code-decides'],
      }),
    );
  },
});

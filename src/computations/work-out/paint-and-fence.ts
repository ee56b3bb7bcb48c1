import { feet, metres, squareMetres } from '../../quantities/index.ts';
import type { Outside } from '../formulas/outside.ts';
import { packsFor, withWaste } from '../formulas/supplies.ts';
import { FENCE_PANEL, PAINT_CAN, PAINT_COVERAGE, WASTE } from '../tables/supply-sizes.ts';
import { ZONE_EDGES } from '../tables/zone-bands.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Worked, whenCovered } from './define-computation.ts';
import { areaInput, countInput, fractionInput, lengthInput, volumeInput } from './input-definitions.ts';
import { areaValue, countValue, lengthValue, volumeValue } from './result-values.ts';

const waste = fractionInput('waste', 'added for waste (0.1 for a tenth)', [0, 1], { default: WASTE });

const paint = defineComputation({
  id: 'paint',
  title: 'Exterior paint for wood',
  group: 'supplies',
  inputs: [
    areaInput('area', 'area to paint', [0, 10_000]),
    countInput('coats', 'coats', [1, 5], { whole: true, default: 2 }),
    countInput('coverage', 'square metres a litre covers once', [1, 30], {
      default: PAINT_COVERAGE,
      unsafe: 'low',
    }),
    waste,
    volumeInput('can', 'volume of a can', [1e-4, 0.1], { default: PAINT_CAN, imperial: 'gal' }),
  ],
  work: (values) => {
    const area = values.number('area') * values.number('coats');
    const net = area / values.number('coverage') / 1000;
    return whenCovered([withWaste(net, values.number('waste'))], (gross): Worked | Outside =>
      whenCovered(
        [packsFor(gross, values.number('can'))],
        (cans): Worked => ({
          values: [
            areaValue('painted', 'area of all coats', squareMetres(area)),
            volumeValue('order', 'paint with waste', gross),
            countValue('cans', 'cans', cans),
          ],
          shopping: [
            {
              item: 'paint',
              label: 'exterior paint, cans',
              amount: gross,
              dimension: 'volume',
              pack: values.number('can'),
              count: cans,
            },
          ],
          sources: ['supply-memory', 'trade-practice'],
          notes: ['paint-no-fire-protection', 'rounded-up'],
        }),
      ),
    );
  },
});

const fence = defineComputation({
  id: 'fence-metal',
  title: 'Metal for the part of fences next to the house',
  group: 'supplies',
  inputs: [
    countInput('places', 'places where a fence meets the house', [0, 50], { whole: true }),
    lengthInput('height', 'height of the fence', [0.3, 4], { default: feet(6) }),
    lengthInput('reach', 'length from the house that must not burn', [0, 30], { default: ZONE_EDGES.near }),
    lengthInput('panel', 'width of a panel', [0.1, 10], { default: FENCE_PANEL, unsafe: 'low' }),
  ],
  work: (values) => {
    const [places, reach, panel] = [values.number('places'), values.number('reach'), values.number('panel')];
    // Each place needs its own whole panels: what is left over at one does not serve the other.
    return whenCovered(
      [packsFor(reach, panel)],
      (each): Worked => ({
        values: [
          lengthValue('length', 'fence to replace', metres(places * reach)),
          areaValue('face', 'face of the new fence', places * reach * values.number('height')),
          countValue('panels', 'panels', each * places),
          countValue('posts', 'posts', places * (each + (each > 0 ? 1 : 0))),
        ],
        shopping: [
          {
            item: 'fence-panel',
            label: 'metal fence panels',
            amount: places * reach,
            dimension: 'length',
            pack: panel,
            count: each * places,
          },
        ],
        sources: ['trade-practice', 'supply-memory'],
        notes: ['buried-services', 'rounded-up'],
      }),
    );
  },
});

/** Computations about paint and fences. */
export const FINISH_COMPUTATIONS: readonly Computation[] = [paint, fence];

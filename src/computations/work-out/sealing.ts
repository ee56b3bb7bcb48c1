import { cubicMetres, inches, metres } from '../../quantities/index.ts';
import type { Outside } from '../formulas/outside.ts';
import { beadFromCartridge, threeSides, withWaste } from '../formulas/supplies.ts';
import { SEALANT_CARTRIDGE, WASTE, WEATHER_STRIP_PACK } from '../tables/supply-sizes.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Worked, whenCovered } from './define-computation.ts';
import { countInput, fractionInput, lengthInput, volumeInput } from './input-definitions.ts';
import { countValue, lengthValue } from './result-values.ts';
import { shoppingLine } from './shopping-line.ts';

const waste = fractionInput('waste', 'added for waste (0.1 for a tenth)', [0, 1], { default: WASTE });
const small = { imperial: 'in', metric: 'mm' } as const;

const sealant = defineComputation({
  id: 'sealant',
  title: 'Cartridges of sealant for a length of gap',
  group: 'supplies',
  inputs: [
    lengthInput('length', 'length of all gaps', [0, 10_000]),
    lengthInput('beadWidth', 'width of the bead', [0.0005, 0.05], { ...small, default: inches(1 / 4) }),
    lengthInput('beadDepth', 'depth of the bead', [0.0005, 0.05], { ...small, default: inches(1 / 4) }),
    waste,
    volumeInput('cartridge', 'volume of a cartridge', [1e-5, 0.01], {
      default: SEALANT_CARTRIDGE,
      imperial: 'floz',
      metric: 'ml',
    }),
  ],
  work: (values) => {
    const cartridge = cubicMetres(values.number('cartridge'));
    const [width, depth] = [metres(values.number('beadWidth')), metres(values.number('beadDepth'))];
    const order = withWaste(values.number('length'), values.number('waste'));
    return whenCovered([beadFromCartridge(cartridge, width, depth), order], (bead, gross): Worked | Outside =>
      whenCovered(
        [shoppingLine('sealant', 'sealant, cartridges', 'length', gross, bead)],
        (cartridges): Worked => ({
          values: [
            lengthValue('bead', 'bead from one cartridge', bead),
            lengthValue('order', 'bead with waste', gross),
            countValue('cartridges', 'cartridges', cartridges.count),
          ],
          shopping: [cartridges],
          sources: ['arithmetic', 'trade-practice'],
          notes: ['keep-drains-open', 'rounded-up'],
        }),
      ),
    );
  },
});

const weatherStrip = defineComputation({
  id: 'weather-strip',
  title: 'Weather strip for doors',
  group: 'supplies',
  inputs: [
    lengthInput('width', 'width of the door', [0.3, 10]),
    lengthInput('height', 'height of the door', [0.3, 6]),
    countInput('count', 'number of doors', [0, 100], { whole: true, default: 1 }),
    waste,
    lengthInput('pack', 'length in a pack', [0.1, 100], { default: WEATHER_STRIP_PACK }),
  ],
  work: (values) => {
    const [width, height] = [metres(values.number('width')), metres(values.number('height'))];
    const net = threeSides(width, height) * values.number('count');
    const foot = width * values.number('count');
    const gross = withWaste(net, values.number('waste'));
    return whenCovered([gross], (order): Worked | Outside =>
      whenCovered(
        [shoppingLine('weather-strip', 'weather strip, packs', 'length', order, values.number('pack'))],
        (packs): Worked => ({
          values: [
            lengthValue('sidesAndTop', 'strip for sides and top', net),
            lengthValue('foot', 'strip for the foot of the door', foot),
            lengthValue('order', 'sides and top with waste', order),
            countValue('packs', 'packs for sides and top', packs.count),
          ],
          shopping: [
            packs,
            {
              item: 'door-foot-strip',
              label: 'strip for the foot of the door',
              amount: foot,
              dimension: 'length',
              pack: width,
              count: values.number('count'),
            },
          ],
          sources: ['arithmetic', 'supply-memory', 'trade-practice'],
          notes: ['rounded-up'],
        }),
      ),
    );
  },
});

/** Computations about sealing gaps. */
export const SEALING_COMPUTATIONS: readonly Computation[] = [sealant, weatherStrip];

import { cubicMetres, inches, metres, squareMetres, toBase } from '../../quantities/index.ts';
import type { Outside } from '../formulas/outside.ts';
import { coveringVolume, looseWeight, meshPiece, withWaste } from '../formulas/supplies.ts';
import * as size from '../tables/supply-sizes.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Worked, whenCovered } from './define-computation.ts';
import { areaInput, countInput, fractionInput, lengthInput, volumeInput } from './input-definitions.ts';
import { areaValue, countValue, massValue, volumeValue } from './result-values.ts';
import { shoppingLine } from './shopping-line.ts';

const waste = fractionInput('waste', 'added for waste (0.1 for a tenth)', [0, 1], { default: size.WASTE });

const gravel = defineComputation({
  id: 'gravel',
  title: 'Gravel or rock for a strip of ground',
  group: 'supplies',
  inputs: [
    areaInput('area', 'area to cover', [0, 100_000]),
    lengthInput('depth', 'depth of the gravel', [0.005, 1], {
      default: inches(3),
      imperial: 'in',
      metric: 'mm',
    }),
    waste,
    countInput('density', 'weight of a cubic metre, kg', [500, 3000], { default: size.GRAVEL_DENSITY }),
    volumeInput('bag', 'volume of a bag', [0.001, 2], { default: size.GRAVEL_BAG }),
  ],
  work: (values) =>
    whenCovered(
      [coveringVolume(squareMetres(values.number('area')), metres(values.number('depth')))],
      (net) =>
        whenCovered([withWaste(net, values.number('waste'))], (gross): Worked | Outside => {
          const weight = looseWeight(cubicMetres(gross), values.number('density'));
          const bags = shoppingLine('gravel', 'gravel, bags', 'volume', gross, values.number('bag'));
          const yards = shoppingLine(
            'gravel-loose',
            'gravel, loose, cubic yards',
            'volume',
            gross,
            toBase(1, 'cuyd'),
          );
          return whenCovered(
            [weight, bags, yards],
            (kilograms, bagLine, yardLine): Worked => ({
              values: [
                volumeValue('volume', 'volume without waste', net),
                volumeValue('order', 'volume to order', gross),
                massValue('weight', 'weight of the order', kilograms),
                countValue('bags', 'bags', bagLine.count),
                countValue('yards', 'whole cubic yards', yardLine.count),
              ],
              shopping: [bagLine, yardLine],
              sources: ['gravel-tables', 'supply-memory'],
              notes: ['not-bark', 'rounded-up'],
            }),
          );
        }),
    ),
});

const small = { imperial: 'in', metric: 'mm' } as const;

const mesh = defineComputation({
  id: 'mesh',
  title: 'Metal mesh for a number of vents',
  group: 'supplies',
  inputs: [
    lengthInput('width', 'width of each vent', [0.01, 5], small),
    lengthInput('height', 'height of each vent', [0.01, 5], small),
    countInput('count', 'number of vents', [0, 1000], { whole: true }),
    lengthInput('overlap', 'mesh past the opening on each side', [0, 0.3], {
      ...small,
      default: size.MESH_OVERLAP,
    }),
    waste,
    lengthInput('rollWidth', 'width of a roll', [0.05, 5], { default: size.MESH_ROLL.width }),
    lengthInput('rollLength', 'length of a roll', [0.1, 100], { default: size.MESH_ROLL.length }),
  ],
  work: (values) => {
    const [width, height] = [metres(values.number('width')), metres(values.number('height'))];
    return whenCovered([meshPiece(width, height, metres(values.number('overlap')))], (piece) => {
      const net = piece * values.number('count');
      return whenCovered([withWaste(net, values.number('waste'))], (gross): Worked | Outside => {
        const roll = values.number('rollWidth') * values.number('rollLength');
        return whenCovered(
          [shoppingLine('mesh', 'metal mesh, rolls', 'area', gross, roll)],
          (rolls): Worked => ({
            values: [
              areaValue('piece', 'mesh for each vent', piece),
              areaValue('order', 'mesh with waste', gross),
              countValue('rolls', 'rolls by area', rolls.count),
            ],
            shopping: [rolls],
            sources: ['arithmetic', 'supply-memory', 'trade-practice'],
            notes: ['rounded-up', 'appliance-air-first'],
          }),
        );
      });
    });
  },
});

/** Computations about stone and mesh. */
export const SUPPLY_COMPUTATIONS: readonly Computation[] = [gravel, mesh];

import { metres } from '../../quantities/index.ts';
import { rectangle } from '../formulas/outline-shapes.ts';
import { extentOf, openExtent } from './extent.ts';
import { derived, ofLimit, ofMeasure } from './given.ts';
import type { Given, HouseComputation } from './house-computation.ts';

const zones: HouseComputation = {
  id: 'zones',
  per: 'house',
  runs: 'zone-areas',
  at: (house) => {
    const extent = extentOf(house);
    if (extent === undefined) {
      const question = openExtent(house);
      return question === undefined ? undefined : { kind: 'missing', question };
    }
    const { length, depth } = extent;
    const outline = [rectangle(metres(Number(length.value)), metres(Number(depth.value)))];
    const lots = house.facts.sides.map((side): [string, Given | undefined] => [
      `lot-${side}`,
      ofMeasure(house, 'about.lot-line', 'length', { side }),
    ]);
    return {
      kind: 'inputs',
      inputs: {
        outline: derived(outline, length, depth),
        near: ofLimit(house, 'zone0', 'length'),
        middle: ofLimit(house, 'zone1', 'length'),
        far: ofLimit(house, 'zone2', 'length'),
        ...Object.fromEntries(lots),
      },
      notes: ['plain-rectangle'],
    };
  },
};

/** The ground round the house. */
export const ZONES_OF_HOUSE: readonly HouseComputation[] = [zones];

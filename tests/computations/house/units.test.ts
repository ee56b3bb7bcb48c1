import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allOutcomes } from '../../../src/computations/house/outcome.ts';
import { changed, demoText, house } from './house-of.ts';

const measures = {
  'vents.area-length': [20, 80],
  'vents.area-width': [15, 60],
  'zone1.shrub-height': [0.5, 9],
  'zone1.shrub-gap': [0, 60],
  'zone1.crown-gap': [0, 60],
  'about.next-house': [5, 90],
  'zone0.plant-height': [1, 9],
  'eaves.gap': [0.03, 0.15],
} as const;

const inFeet = fc.record(
  Object.fromEntries(
    Object.entries(measures).map(([id, [min, max]]) => [id, fc.double({ min, max, noNaN: true })]),
  ),
);

/** A number as people type it: no exponent. */
const typed = (value: number) => value.toFixed(12);
const write = (answers: Readonly<Record<string, number>>, unit: 'ft' | 'm') =>
  Object.fromEntries(
    Object.entries(answers).map(([id, value]) => [
      id,
      `${typed(unit === 'ft' ? value : value * 0.3048)} ${unit}`,
    ]),
  );

const kiln = demoText('kiln-road-3');

describe('feet and metres', () => {
  it('give the same results to a billionth before rounding, and the same counts after', () => {
    fc.assert(
      fc.property(inFeet, (answers) => {
        const [imperial, metric] = (['ft', 'm'] as const).map((unit) =>
          allOutcomes(house(changed(kiln, write(answers, unit)))),
        );
        expect(metric?.map(({ id, kind, spot }) => ({ id, kind, spot }))).toEqual(
          imperial?.map(({ id, kind, spot }) => ({ id, kind, spot })),
        );
        imperial?.forEach((one, place) => {
          const other = metric?.[place];
          if (one.kind !== 'result' || other?.kind !== 'result') return;
          one.values.forEach((value, position) => {
            const found = other.values[position]?.value ?? Number.NaN;
            expect(Math.abs(found - value.value), `${one.id} ${value.id}`).toBeLessThanOrEqual(
              1e-9 * Math.max(1, Math.abs(value.value)),
            );
          });
          expect(other.shopping.map(({ count }) => count)).toEqual(one.shopping.map(({ count }) => count));
        });
      }),
      { numRuns: 40 },
    );
  });
});

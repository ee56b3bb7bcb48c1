import { quantileSorted, standardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type AgreementTable, kappaOf, kappaOfPairs } from '../../src/practice/agreement/kappa.ts';
import { createRandom, drawOne } from '../../src/practice/house/random.ts';

const knownKappa = (table: AgreementTable) => {
  const kappa = kappaOf(table);
  if (kappa.kind !== 'kappa') throw new Error(`no kappa: ${kappa.kind}`);
  return kappa;
};

/** Kappa from the cell parts alone, for the numeric derivative below. */
function bareKappa(parts: readonly number[], size: number): number {
  const at = (row: number, column: number) => parts[row * size + column] ?? 0;
  const classes = Array.from({ length: size }, (_, position) => position);
  const total = parts.reduce((sum, part) => sum + part, 0);
  const sum = (pick: (one: number) => number) => classes.reduce((all, one) => all + pick(one), 0);
  const agreed = sum((one) => at(one, one)) / total;
  const chance = sum(
    (one) => (sum((other) => at(one, other)) / total) * (sum((other) => at(other, one)) / total),
  );
  return (agreed - chance) / (1 - chance);
}

/**
 * The delta method for a multinomial sample: var = (sum of p g^2 - (sum of p g)^2) / n with g the slope of kappa in each
 * cell (Agresti, Categorical Data Analysis, 14.1.4). Independent of the closed formula: the slopes are taken numerically.
 */
function deltaWidth(table: AgreementTable): number {
  const size = table.length;
  const counts = table.flat();
  const total = counts.reduce((sum, count) => sum + count, 0);
  const parts = counts.map((count) => count / total);
  const step = 1e-6;
  const slopes = parts.map((_, cell) => {
    const moved = (by: number) => parts.map((part, other) => (other === cell ? part + by : part));
    return (bareKappa(moved(step), size) - bareKappa(moved(-step), size)) / (2 * step);
  });
  const mean = parts.reduce((sum, part, cell) => sum + part * (slopes[cell] ?? 0), 0);
  const square = parts.reduce((sum, part, cell) => sum + part * (slopes[cell] ?? 0) ** 2, 0);
  return 1.959963984540054 * Math.sqrt((square - mean ** 2) / total);
}

const tables: readonly AgreementTable[] = [
  [
    [20, 5],
    [10, 15],
  ],
  [
    [45, 15],
    [25, 15],
  ],
  [
    [25, 35],
    [5, 35],
  ],
  [
    [30, 4],
    [2, 180],
  ],
  [
    [10, 2, 3],
    [1, 12, 4],
    [2, 0, 9],
  ],
];

describe("Cohen's kappa", () => {
  it('is 0.4 for [[20, 5], [10, 15]]', () => {
    // Standard worked example: agreed 0.7, by chance 0.5.
    expect(knownKappa(tables[0] ?? []).kappa).toBeCloseTo(0.4, 12);
  });

  it('tells apart two tables with the same raw agreement', () => {
    // Worked examples with 60 of 100 agreed: 0.1304 and 0.2593 (from memory of an encyclopedia article; recomputed below).
    expect(knownKappa(tables[1] ?? []).kappa).toBeCloseTo((0.6 - 0.54) / (1 - 0.54), 12);
    expect(knownKappa(tables[2] ?? []).kappa).toBeCloseTo((0.6 - 0.46) / (1 - 0.46), 12);
  });

  it.each(tables.map((table) => [table]))('has the interval of the delta method for %j', (table) => {
    const { kappa, interval } = knownKappa(table);
    const width = deltaWidth(table);
    expect(interval?.low).toBeCloseTo(Math.max(-1, kappa - width), 6);
    expect(interval?.high).toBeCloseTo(Math.min(1, kappa + width), 6);
  });

  it('has an interval that a bootstrap agrees with', () => {
    // Spread and quantiles of 4,000 resamples by simple-statistics, an independent library.
    const table = [
      [40, 10],
      [20, 130],
    ];
    const cells = table.flatMap((row, i) => row.map((count, j) => [[i, j] as const, count] as const));
    const random = createRandom(7);
    const samples = Array.from({ length: 4000 }, () => {
      const drawn = [
        [0, 0],
        [0, 0],
      ];
      for (let n = 0; n < 200; n++) {
        const [i, j] = drawOne(random, cells) ?? [0, 0];
        const row = drawn[i];
        if (row) row[j] = (row[j] ?? 0) + 1;
      }
      return knownKappa(drawn).kappa;
    }).sort((a, b) => a - b);
    const { interval, kappa } = knownKappa(table);
    expect(((interval?.high ?? 0) - kappa) / 1.96).toBeCloseTo(standardDeviation(samples), 2);
    expect(interval?.low).toBeCloseTo(quantileSorted(samples, 0.025), 1);
    expect(interval?.high).toBeCloseTo(quantileSorted(samples, 0.975), 1);
  });

  it('cannot be worked out of nothing, or where all is one class', () => {
    expect(kappaOfPairs([])).toEqual({ kind: 'noPairs' });
    expect(kappaOfPairs([{ first: false, second: false }])).toEqual({ kind: 'oneClass', pairs: 1 });
  });

  it('is 1 without an interval where the two never differ', () => {
    const kappa = kappaOfPairs([
      { first: true, second: true },
      { first: false, second: false },
    ]);
    expect(kappa).toEqual({ kind: 'kappa', kappa: 1, pairs: 2, interval: undefined });
  });

  it('gives no interval of no width where one of the two says the same of every pair', () => {
    const kappa = kappaOfPairs([
      { first: false, second: true },
      { first: false, second: false },
      { first: false, second: false },
    ]);
    expect(kappa).toMatchObject({ kind: 'kappa', interval: undefined });
  });
});

import { mean, variance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/planning/seeded-random.ts';

const draw = (seed: number, count: number) => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, random);
};

describe('the seeded generator', () => {
  it('gives the same numbers for the same seed and others for another', () => {
    expect(draw(7, 20)).toEqual(draw(7, 20));
    expect(draw(7, 20)).not.toEqual(draw(8, 20));
  });

  it.each([1, 20260701, 2 ** 40 + 3])(
    'is uniform in [0, 1): mean, variance and a chi-square over 20 bins, seed %i',
    (seed) => {
      const numbers = draw(seed, 20_000);
      expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...numbers)).toBeLessThan(1);
      expect(mean(numbers)).toBeCloseTo(1 / 2, 2);
      expect(variance(numbers)).toBeCloseTo(1 / 12, 2);
      const bins = new Array<number>(20).fill(0);
      for (const one of numbers) bins[Math.floor(one * 20)] = (bins[Math.floor(one * 20)] ?? 0) + 1;
      const chiSquare = bins.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
      // 43.82: the 0.999 quantile of chi-square with 19 degrees of freedom (standard tables).
      expect(chiSquare).toBeLessThan(43.82);
    },
  );
});

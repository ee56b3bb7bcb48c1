import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { type ChoiceJob, fits, spendOf } from '../../src/planning/choosing/choice.ts';
import { choose } from '../../src/planning/choosing/choose.ts';
import { doJob, type Job, nothingDone, waysByElement } from '../../src/ranking/exposure.ts';
import { knapsack, problemOf, removing, type SmallProblem } from './small-problem.ts';

const endless = Number.POSITIVE_INFINITY;

/** The best gain over all sets of jobs, by trying every one with the ranking's own sums. */
function byTryingAll({ readiness, ways, jobs, costs, shared, limit }: SmallProblem): number {
  const chains = { readiness, ways };
  const by = waysByElement(chains);
  let best = 0;
  for (let mask = 0; mask < 2 ** jobs.length; mask++) {
    const set = [...jobs.keys()].filter((job) => (mask >> job) & 1);
    const complete = set.every((job) => costs[job]?.requires.every((other) => (mask >> other) & 1));
    if (!complete || !fits(spendOf({ jobs: costs, shared }, set), limit)) continue;
    const progress = nothingDone(chains);
    const gain = set.reduce((sum, job) => sum + doJob(chains, by, progress, jobs[job] as Job), 0);
    best = Math.max(best, gain);
  }
  return best;
}

describe('choosing jobs within money and hours', () => {
  it('finds 309, the known best of a classic knapsack', () => {
    // Source: the P01 example of knapsack data sets in teaching use (weights 23 31 29 …, capacity 165); 309 is reproduced by four solvers.
    const weights = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82];
    const values = [92, 57, 49, 68, 60, 43, 67, 84, 87, 72];
    const problem = knapsack(
      values,
      weights.map((money) => ({ money, hours: 0 })),
      { money: 165, hours: endless },
    );
    const { gain, chosen, exact } = choose(problemOf(problem));
    expect(gain).toBeCloseTo(309, 9);
    expect(chosen).toEqual([0, 1, 2, 3, 5]);
    expect(exact).toBe(true);
  });

  it('takes the events of a published fault tree in the order of their importance', () => {
    // Source: "Two trains" of the public test suite of the SCRAM reliability code: sum 0.012; importance P1 0.6, P2 0.5833,
    // V2 0.4167, V1 0.4. With one job to give it must be P1; with two, P1 and V1 leave nothing: both trains of that side.
    const ways = [
      [0, 1],
      [0, 3],
      [2, 1],
      [2, 3],
    ];
    const costs = ways.map((): ChoiceJob => ({ money: 1, hours: 0, shared: [], requires: [] }));
    const trains = (money: number) =>
      choose(
        problemOf({
          readiness: [0.04, 0.05, 0.06, 0.07],
          ways,
          jobs: [0, 1, 2, 3].map(removing),
          costs,
          shared: [],
          limit: { money, hours: endless },
        }),
      );
    expect(trains(1).chosen).toEqual([2]);
    expect(trains(1).gain / 0.012).toBeCloseTo(0.6, 4);
    expect(trains(2).gain).toBeCloseTo(0.012, 12);
    expect([
      [0, 2],
      [1, 3],
    ]).toContainEqual(trains(2).chosen);
  });

  it('agrees with an independent solver of linear programmes where gains only add up', async () => {
    // The package's types describe its default export one level too deep.
    const highs = await (highsLoader as unknown as typeof highsLoader.default)();
    const item = fc.record({
      value: fc.integer({ min: 1, max: 99 }),
      money: fc.integer({ min: 0, max: 60 }),
      hours: fc.integer({ min: 0, max: 12 }),
    });
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 1, maxLength: 22 }),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 50 }),
        (items, money, hours) => {
          const names = items.map((_, position) => `x${position}`);
          const sum = (key: 'value' | 'money' | 'hours') =>
            items.map((one, position) => `${one[key]} ${names[position]}`).join(' + ');
          const programme = `Maximize\n obj: ${sum('value')}\nSubject To\n m: ${sum('money')} <= ${money}\n h: ${sum('hours')} <= ${hours}\nBinary\n ${names.join(' ')}\nEnd\n`;
          const expected = highs.solve(programme).ObjectiveValue;
          const found = choose(
            problemOf(
              knapsack(
                items.map((one) => one.value),
                items,
                { money, hours },
              ),
            ),
          );
          expect(found.gain).toBeCloseTo(expected, 6);
          expect(found.exact).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });

  const element = fc.nat({ max: 9 });
  const small = fc
    .record({
      readiness: fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 10, maxLength: 10 }),
      ways: fc.array(fc.uniqueArray(element, { minLength: 1, maxLength: 4 }), {
        minLength: 1,
        maxLength: 24,
      }),
      jobs: fc.array(
        fc.record({
          treats: fc.uniqueArray(fc.tuple(element, fc.constantFrom(0, 0.05, 0.15, 0.3, 0.5, 0.85)), {
            minLength: 1,
            maxLength: 4,
            selector: ([one]) => one,
          }),
          insteadOf: fc.option(fc.constantFrom('vents', 'eaves', 'shrubs'), { nil: undefined }),
          money: fc.integer({ min: 0, max: 50 }),
          hours: fc.integer({ min: 0, max: 8 }),
          shared: fc.uniqueArray(fc.nat({ max: 2 }), { maxLength: 2 }),
          requires: fc.uniqueArray(fc.nat({ max: 14 }), { maxLength: 2 }),
        }),
        { minLength: 1, maxLength: 15 },
      ),
      shared: fc.array(
        fc.record({ money: fc.integer({ min: 0, max: 40 }), hours: fc.integer({ min: 0, max: 3 }) }),
        { minLength: 3, maxLength: 3 },
      ),
      money: fc.option(fc.integer({ min: 0, max: 200 }), { nil: endless }),
      hours: fc.option(fc.integer({ min: 0, max: 30 }), { nil: endless }),
    })
    .map(
      ({ jobs, money, hours, ...rest }): SmallProblem => ({
        ...rest,
        jobs: jobs.map(({ treats, insteadOf }, position) => ({
          id: `j${position}`,
          lane: 0,
          treats: new Map(treats),
          insteadOf,
        })),
        costs: jobs.map((job, position) => ({
          money: job.money,
          hours: job.hours,
          shared: job.shared,
          requires: job.requires.filter((one) => one < jobs.length && one !== position),
        })),
        limit: { money, hours },
      }),
    );

  it('agrees with trying every set of up to fifteen jobs: overlaps, either-or, what comes before, shared visits', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const found = choose(problemOf(problem));
        expect(found.gain).toBeCloseTo(byTryingAll(problem), 8);
        expect(found.exact).toBe(true);
        const { costs, shared, limit } = problem;
        expect(fits(spendOf({ jobs: costs, shared }, found.chosen), limit)).toBe(true);
        for (const job of found.chosen)
          expect(found.chosen).toEqual(expect.arrayContaining([...(costs[job]?.requires ?? [])]));
      }),
      { numRuns: 40 },
    );
  }, 120_000);

  it('says how far the best found can be from the best when the search ends early', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const early = choose(problemOf(problem), 1);
        const best = byTryingAll(problem);
        expect(early.bound).toBeGreaterThanOrEqual(best - 1e-9);
        expect(early.gain).toBeLessThanOrEqual(best + 1e-9);
        if (early.exact) expect(early.gain).toBeCloseTo(best, 8);
      }),
      { numRuns: 25 },
    );
  }, 120_000);
});

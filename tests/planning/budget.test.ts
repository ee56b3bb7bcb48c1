import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { planWithin } from '../../src/planning/budget.ts';
import { curveOf } from '../../src/planning/curve.ts';
import { drawCurve, plainSigns } from '../../src/planning/draw-curve.ts';
import { costsOfJobs, costTogether } from '../../src/planning/job-cost.ts';
import { seededRandom } from '../../src/planning/seeded-random.ts';
import { takenOffBy } from '../../src/ranking/rank.ts';
import { anyHouse, checklist, demoHouses, sheetOf } from './houses.ts';

const { flow } = checklist;
const random = seededRandom(5);
const made = [1, 2, 3, 4, 5, 6].map(
  (number) => [`made-up ${number}`, assess(checklist, anyHouse(random))] as const,
);
const houses = [
  ...demoHouses.map((name) => [name, assess(checklist, sheetOf(`houses/${name}`))] as const),
  ...made,
];
const weekend = { money: 600, hours: 12 };

describe('the plan within a budget', () => {
  it.each(houses)(
    'is exact for a weekend and a few hundred dollars, and keeps within both: %s',
    (_, assessment) => {
      const plan = planWithin(assessment, flow, weekend);
      expect(plan.exact).toBe(true);
      expect(plan.gap).toBe(0);
      expect(plan.money.high).toBeLessThanOrEqual(weekend.money + 1e-9);
      expect(plan.hours.high).toBeLessThanOrEqual(weekend.hours + 1e-9);
      const chosen = assessment.ranked
        .map((one) => one.proposal)
        .filter((one) => plan.jobs.some(({ id }) => id === one.id));
      expect(plan.takenOff).toBeCloseTo(takenOffBy(chosen, assessment.chains), 9);
      expect(plan.jobs.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(plan.takenOff, 9);
      const together = costTogether(costsOfJobs(flow, chosen, assessment.facts.computed));
      expect(plan.hours).toEqual(together.hours);
      expect(plan.money.high).toBeCloseTo(together.money.high, 9);
    },
  );

  it.each(houses)('holds what must come before each of its jobs, and names the rest: %s', (_, assessment) => {
    const plan = planWithin(assessment, flow, { money: 5000, hours: 40 });
    const chosen = new Set(plan.jobs.map((one) => one.id));
    const listed = new Set(assessment.ranked.map((one) => one.proposal.id));
    for (const { proposal } of assessment.ranked) {
      if (!chosen.has(proposal.id)) continue;
      for (const id of proposal.requires)
        if (listed.has(id)) expect(chosen, `${proposal.id} after ${id}`).toContain(id);
    }
    const treating = assessment.ranked
      .filter((one) => one.proposal.treats.size > 0)
      .map((one) => one.proposal.id);
    const named = [...chosen, ...plan.leftOut.map((one) => one.id)];
    expect(new Set(named).size).toBe(named.length);
    expect(named).toEqual(expect.arrayContaining(treating));
  });

  it.each(houses)(
    'takes off no less with more to give, and says what 100 more would add: %s',
    (_, assessment) => {
      let before = 0;
      for (const money of [0, 100, 400, 1500]) {
        const plan = planWithin(assessment, flow, { money, hours: 20 });
        expect(plan.takenOff).toBeGreaterThanOrEqual(before - 1e-9);
        before = plan.takenOff;
        const richer = planWithin(assessment, flow, { money: money + 100, hours: 20 });
        expect(plan.moreMoney?.adds).toBeCloseTo(Math.max(0, richer.takenOff - plan.takenOff), 9);
      }
    },
  );

  it('takes everything that still takes something off where there is no limit', () => {
    for (const [, assessment] of houses) {
      const plan = planWithin(assessment, flow, {});
      expect(plan.takenOff).toBeCloseTo(plan.possible, 9);
      expect(plan.moreMoney).toBeUndefined();
    }
  });

  it('gives a house in order nothing to do', () => {
    const plan = planWithin(assess(checklist, sheetOf('houses/larkspur-way-41')), flow, weekend);
    expect(plan).toMatchObject({ jobs: [], takenOff: 0, leftOut: [], exact: true });
  });

  it('says how much could be missed where the search ends early, and that is little', () => {
    const assessment = assess(checklist, sheetOf('houses/kiln-road-3'));
    const plan = planWithin(assessment, flow, { money: 10_000, hours: 60 });
    expect(plan.gap).toBeLessThan(0.06);
    if (!plan.exact) expect(plan.gap).toBeGreaterThan(0);
  });
});

describe('what jobs cost together', () => {
  it('counts a set of tools and the visit of a trade once', () => {
    const { ranked, facts } = assess(checklist, sheetOf('houses/kiln-road-3'));
    const arborist = ranked.map((one) => one.proposal).filter((one) => one.action.id === 'arborist');
    expect(arborist.length).toBe(2);
    const costs = costsOfJobs(flow, arborist, facts.computed);
    const visit = flow.costs.find((one) => one.id === 'trade-visit');
    const apart = costs.reduce((sum, one) => sum + one.money.high, 0);
    expect(costTogether(costs).money.high).toBeCloseTo(apart + (visit?.high ?? 0), 9);
  });

  it('counts no hours of the household for a trade, and pays hired hands where a job goes to a trade only here', () => {
    const { ranked, facts } = assess(checklist, sheetOf('houses/old-flume-road-27'));
    const moved = ranked
      .map((one) => one.proposal)
      .find((one) => one.action.id === 'make-islands' && one.lane === 'trade');
    const hour = flow.costs.find((one) => one.id === 'helper-hour');
    expect(moved).toBeDefined();
    const [cost] = moved ? costsOfJobs(flow, [moved], facts.computed) : [];
    expect(cost?.hours).toEqual({ low: 0, high: 0 });
    expect(cost?.money.high).toBeGreaterThanOrEqual((moved?.action.hours.high ?? 0) * (hour?.high ?? 0));
  });
});

describe('the curve of a plan', () => {
  it.each(houses)('falls from all to what no job takes off, and costs only rise: %s', (_, assessment) => {
    const { points, floor } = curveOf(assessment, flow);
    expect(points[0]).toMatchObject({ job: undefined, left: 1, money: { high: 0 }, hours: { high: 0 } });
    expect(points.at(-1)?.left).toBeCloseTo(floor, 9);
    points.slice(1).forEach((point, at) => {
      expect(point.left).toBeLessThan(points[at]?.left ?? 0);
      expect(point.money.high).toBeGreaterThanOrEqual(points[at]?.money.high ?? 0);
      expect(point.hours.high).toBeGreaterThanOrEqual(points[at]?.hours.high ?? 0);
    });
  });

  it('follows the jobs of a budget, down to what the budget leaves', () => {
    const assessment = assess(checklist, sheetOf('houses/fernhollow-lane-12'));
    const plan = planWithin(assessment, flow, weekend);
    const { points } = curveOf(assessment, flow, plan.jobs);
    expect(points.length).toBe(plan.jobs.length + 1);
    expect(points.at(-1)?.left).toBeCloseTo(1 - plan.takenOff / plan.exposure, 9);
    expect(points.at(-1)?.money.high).toBeCloseTo(plan.money.high, 9);
  });

  it('is drawn within its width in plain characters, falling from left to right', () => {
    const curve = curveOf(assess(checklist, sheetOf('houses/fernhollow-lane-12')), flow);
    const lines = drawCurve(curve, 'hours', { width: 60, height: 8 });
    expect(lines.length).toBe(10);
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(60);
      expect(line).toMatch(/^[ -~]*$/);
    }
    const heights = Array.from(
      { length: 50 },
      (_, column) =>
        lines.filter(
          (line) =>
            (line[7 + column] ?? ' ') !== ' ' &&
            (line[7 + column] === plainSigns.line || line[7 + column] === plainSigns.floor),
        ).length,
    );
    heights.slice(1, 45).forEach((height, at) => {
      expect(height).toBeLessThanOrEqual(heights[at] ?? 0);
    });
    expect(lines[0]).toContain('100 %');
  });
});

import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { groupKeyOf } from '../../src/planning/doubt/group-table.ts';
import { orderRun, runOrder } from '../../src/planning/doubt/run-order.ts';
import { doubtOf, drawReadiness, orderTableOf } from '../../src/planning/doubt.ts';
import { seededRandom } from '../../src/planning/seeded-random.ts';
import { sensitivityOf } from '../../src/planning/sensitivity.ts';
import { orderOfDoing } from '../../src/ranking/order.ts';
import { rank } from '../../src/ranking/rank.ts';
import { anyHouse, checklist, demoHouses, sheetOf } from './houses.ts';

const random = seededRandom(11);
const houses = [
  ...demoHouses.map((name) => [name, assess(checklist, sheetOf(`houses/${name}`))] as const),
  ...[1, 2, 3, 4].map((number) => [`made-up ${number}`, assess(checklist, anyHouse(random, 0.1))] as const),
];

describe('doubt about the order', () => {
  it.each(houses)(
    'works the order out like the ranking itself, for the usual and for drawn readiness: %s',
    (_, assessment) => {
      const table = orderTableOf(checklist, assessment);
      const run = orderRun(table);
      const readiness = Float64Array.from(table.drawn, (one) => one.readiness);
      for (let draw = 0; draw < 12; draw++) {
        if (draw > 0) drawReadiness(table, random, readiness);
        runOrder(table, run, readiness);
        const byKind = new Map(table.drawn.map((one, at) => [one.id, readiness[at] ?? 0]));
        const drawn = assessment.elements.map(
          ({ kind, attack }) => byKind.get(attack === 'flame' ? `${kind}:flame` : kind) ?? 0,
        );
        const chains = { readiness: drawn, ways: assessment.chains.ways };
        const ranked = rank(orderOfDoing(table.list, chains, checklist.flow.walk.tradeFloor), chains);
        const shares = new Map(ranked.map((one) => [one.proposal.id, one.share]));
        table.list.forEach(({ id }, job) => {
          expect(run.listed[job] === 1, id).toBe(shares.has(id));
          if (shares.has(id)) expect(run.share[job]).toBeCloseTo(shares.get(id) ?? 0, 10);
        });
      }
    },
  );

  it.each(houses)(
    'gives the list its own ranks when nothing can vary, and the same result for the same seed: %s',
    (_, assessment) => {
      const still = {
        ...assessment,
        elements: assessment.elements.map((one) => ({ ...one, low: one.readiness, high: one.readiness })),
      };
      const { lines, sameThree, firm } = doubtOf(checklist, still, 1, 5);
      for (const group of assessment.groups) {
        const first = group.jobs[0]?.proposal;
        if (!first || group.share === 0) continue;
        expect(lines.get(groupKeyOf(first))).toMatchObject({
          rank: group.rank,
          from: group.rank,
          to: group.rank,
          listed: 1,
        });
      }
      expect(sameThree).toBe(1);
      expect(firm).toBe(assessment.groups.length);
      expect(doubtOf(checklist, assessment, 5, 50)).toEqual(doubtOf(checklist, assessment, 5, 50));
    },
  );

  it('says how often each line stood in the first three, with its range of ranks', () => {
    const assessment = assess(checklist, sheetOf('houses/fernhollow-lane-12'));
    const { lines, jobs, draws, tossUps } = doubtOf(checklist, assessment, 20260701);
    expect(draws).toBe(1000);
    const listed = [...lines.values()];
    // In every draw three lines hold the first three places.
    expect(listed.reduce((sum, one) => sum + one.topThree, 0)).toBeCloseTo(3, 9);
    expect([...jobs.values()].reduce((sum, one) => sum + one.topThree, 0)).toBeCloseTo(3, 9);
    for (const one of listed) expect(one.from).toBeLessThanOrEqual(one.to);
    for (const { firstAhead } of tossUps) expect(firstAhead).toBeLessThan(2 / 3);
  });
});

describe('the values that would change the first three', () => {
  it.each(houses)('are named where moving one alone changes them, and only there: %s', (_, assessment) => {
    const table = orderTableOf(checklist, assessment);
    const firstThree = (id: string, value: number) => {
      const elements = assessment.elements.map((one) =>
        (one.attack === 'flame' ? `${one.kind}:flame` : one.kind) === id ? { ...one, readiness: value } : one,
      );
      const chains = { readiness: elements.map((one) => one.readiness), ways: assessment.chains.ways };
      const ranked = rank(orderOfDoing(table.list, chains, checklist.flow.walk.tradeFloor), chains);
      const shares = new Map<string, number>();
      for (const { proposal, share } of ranked)
        shares.set(groupKeyOf(proposal), (shares.get(groupKeyOf(proposal)) ?? 0) + share);
      return [...shares]
        .sort((a, b) => b[1] - a[1])
        .slice(0, 3)
        .map(([key]) => key);
    };
    for (const { id, readiness, low, high, changesAt, towards, firstThree: then } of sensitivityOf(
      checklist,
      assessment,
    ).slice(0, 6)) {
      expect(changesAt).toBeGreaterThanOrEqual(low - 1e-12);
      expect(changesAt).toBeLessThanOrEqual(high + 1e-12);
      expect(firstThree(id, changesAt)).toEqual(then);
      expect(firstThree(id, readiness)).not.toEqual(then);
      expect(towards === 'high' ? changesAt > readiness : changesAt < readiness).toBe(true);
    }
  });

  it('are none where the list is empty', () => {
    expect(sensitivityOf(checklist, assess(checklist, sheetOf('houses/larkspur-way-41')))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/assess/assess.ts';
import { drawReadiness, orderTableOf } from '../../src/planning/doubt.ts';
import { seededRandom } from '../../src/planning/seeded-random.ts';
import type { Proposal } from '../../src/ranking/actions.ts';
import { orderOfDoing } from '../../src/ranking/order.ts';
import { takenOffBy } from '../../src/ranking/rank.ts';
import { checklist, sheetOf } from './houses.ts';
import { publishedOrders, sixWeaknesses } from './published-orders.ts';

const draws = 400;
const holdsIn = 0.95;

/** `mesh-vents` is the job at all its places, `mesh-vents@left` at one. */
const named = (list: readonly Proposal[], name: string) =>
  list.filter(({ id }) => id === name || id.split('@')[0] === name);

/** The readiness of every element, once as it is and then drawn afresh, one draw a kind. */
function* readinessDrawn(assessment: Assessment): Generator<readonly number[]> {
  const table = orderTableOf(checklist, assessment);
  const random = seededRandom(20260701);
  const values = Float64Array.from(table.drawn, (one) => one.readiness);
  const places = new Map(table.drawn.map((one, at) => [one.id, at]));
  for (let draw = 0; draw < draws; draw++) {
    if (draw > 0) drawReadiness(table, random, values);
    yield assessment.elements.map(
      ({ kind, attack }) => values[places.get(attack === 'flame' ? `${kind}:flame` : kind) ?? -1] ?? 0,
    );
  }
}

/** In which part of the draws something holds. */
function partHolding(assessment: Assessment, holds: (readiness: readonly number[]) => boolean): number {
  let held = 0;
  for (const readiness of readinessDrawn(assessment)) if (holds(readiness)) held++;
  return held / draws;
}

const weighed = ({ waysIn }: Assessment, readiness: readonly number[]) =>
  waysIn.map((way) => ({
    way,
    weight: way.elements.reduce((product, element) => product * (readiness[element] ?? 0), 1),
  }));

describe('what studies found to matter more comes first on houses made for it', () => {
  const cases = publishedOrders.flatMap((order) =>
    order.before.flatMap((first) => order.after.map((second) => ({ ...order, first, second }))),
  );

  const check = ({ house, by, first, second }: (typeof cases)[number]) => {
    const assessment = assess(checklist, sheetOf(`planning/houses/${house}`));
    const list = assessment.proposals;
    const [one, other] = [named(list, first), named(list, second)];
    expect(one, `${first} is proposed on ${house}`).not.toEqual([]);
    const part = partHolding(assessment, (readiness) => {
      const chains = { readiness, ways: assessment.chains.ways };
      if (by === 'alone') return takenOffBy(one, chains) > takenOffBy(other, chains);
      const shares = orderOfDoing(list, chains, checklist.flow.walk.tradeFloor);
      const shareOf = (jobs: readonly Proposal[]) =>
        shares.filter(({ proposal }) => jobs.includes(proposal)).reduce((sum, { share }) => sum + share, 0);
      return shareOf(one) > shareOf(other);
    });
    expect(part).toBeGreaterThanOrEqual(holdsIn);
  };

  it.each(cases)('$study: $first before $second by $by ($claim)', check);

  it.each(sixWeaknesses)(
    'California Civil Code 1102.6f (reported): "$weakness" leads to a job in the list',
    ({ house, jobs }) => {
      const { ranked } = assess(checklist, sheetOf(`planning/houses/${house}`));
      const actions = ranked.map((one) => one.proposal.action.id);
      expect(jobs.some((job) => actions.includes(job))).toBe(true);
    },
  );

  it('NIST, Waldo Canyon (read): 48 of about 450 ignitions came from wildland, so far fuel is a small part beside it', () => {
    const assessment = assess(checklist, sheetOf('planning/houses/ordinary-beside-wild-land'));
    expect(assessment.waysIn.some((way) => way.kind.id.startsWith('far-'))).toBe(true);
    const part = partHolding(assessment, (readiness) => {
      const ways = weighed(assessment, readiness);
      const sum = (list: typeof ways) => list.reduce((total, one) => total + one.weight, 0);
      return sum(ways.filter(({ way }) => way.kind.id.startsWith('far-'))) < 0.2 * sum(ways);
    });
    expect(part).toBeGreaterThanOrEqual(holdsIn);
  });

  it('Zamanialaei 2025 (read): spacing was strongest, so a house 10 ft away is the heaviest way in on that side', () => {
    const assessment = assess(checklist, sheetOf('planning/houses/neighbour-near'));
    const part = partHolding(assessment, (readiness) => {
      const left = weighed(assessment, readiness).filter(({ way }) => way.side === 'left');
      const heaviest = left.reduce((most, one) => (one.weight > most.weight ? one : most));
      return heaviest.way.kind.id === 'neighbour-to-facing-side';
    });
    expect(part).toBeGreaterThanOrEqual(holdsIn);
  });

  it('Knapp 2021 (read): risk falls with distance and ends beyond 18 m (59 ft) from a burning house', () => {
    const sheet = sheetOf('planning/houses/neighbour-near');
    const at = (metres: number) => {
      const far = { status: 'given', value: 40 } as const;
      const sides = { front: far, back: far, right: far, left: { status: 'given', value: metres } as const };
      return assess(checklist, { ...sheet, 'about.next-house': { status: 'bySide', sides } });
    };
    const [near, middle, beyond] = [at(3), at(12), at(21)];
    const random = seededRandom(3);
    for (let draw = 0; draw < draws; draw++) {
      const values = new Map<string, number>();
      const weightOf = ({ waysIn, elements }: Assessment) =>
        waysIn
          .filter((way) => way.kind.id === 'neighbour-to-facing-side')
          .reduce(
            (sum, way) =>
              sum +
              way.elements.reduce((product, position) => {
                const element = elements[position];
                if (!element) return 0;
                const { id, low, high } = element;
                const value = values.get(id) ?? low + (high - low) * random();
                values.set(id, value);
                return product * value;
              }, 1),
            0,
          );
      expect(weightOf(near)).toBeGreaterThan(weightOf(middle));
      expect(weightOf(middle)).toBeGreaterThan(weightOf(beyond));
      expect(weightOf(beyond)).toBe(0);
    }
  });

  it('Troy 2022 (read): open space under a manufactured home is far worse, so closing or clearing it is among the first three', () => {
    const { groups } = assess(checklist, sheetOf('planning/houses/open-skirting'));
    const firstThree = groups.slice(0, 3).flatMap((group) => group.jobs.map((job) => job.proposal.action.id));
    expect(
      firstThree.some((id) => ['clear-under-floor', 'close-skirting', 'sound-skirting'].includes(id)),
    ).toBe(true);
  });
});

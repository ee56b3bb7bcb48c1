import { describe, expect, it } from 'vitest';
import type { Debrief } from '../../src/practice/debrief/debrief.ts';
import { makeDebrief } from '../../src/practice/debrief/make-debrief.ts';
import { debriefParts } from '../../src/practice/debrief/say-debrief.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import { knownHouse, stopsOf } from '../../src/practice/session/known.ts';
import { laneOrder } from '../../src/ranking/order.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { realPractice, wordingOf } from './practice-for-tests.ts';
import { type Played, play, promised, type Trainee, trainees } from './scripted-trainees.ts';

const houses = 500;
const levels = ['easy', 'ordinary', 'hard'] as const;

/** Every seed is one house, played by one of the four trainees in turn. */
function sessionsOf(kind: Trainee): (Played & { seed: number })[] {
  const { maker } = realPractice();
  return Array.from({ length: houses }, (_, number) => number + 1)
    .filter((seed) => seed % trainees.length === trainees.indexOf(kind))
    .map((seed) => ({ seed, ...play(makeHouse(maker, seed, levels[seed % 3] ?? 'easy'), kind) }));
}

const sorted = (list: Iterable<string>) => [...list].sort();

/** What was passed over, told again from the visits alone. */
function passedBy(stops: readonly string[], visits: readonly string[]) {
  return stops.flatMap((stop) => {
    const own = visits.indexOf(stop);
    const before = own < 0 ? visits : visits.slice(0, own);
    const at = before.find((other) => stops.indexOf(other) > stops.indexOf(stop));
    return at === undefined ? [] : [{ stop, at, madeUp: own >= 0 }];
  });
}

/** Kappa of a two-by-two table in its other form: 2 (ad - bc) / ((a+b)(b+d) + (a+c)(c+d)). */
const kappa = (a: number, b: number, c: number, d: number) =>
  (2 * (a * d - b * c)) / ((a + b) * (b + d) + (a + c) * (c + d));

/** Every fact of the debrief stands in its words: one line for each kind missed or invented, each promise, each stop passed over. */
function checkWords(state: Played['state'], debrief: Debrief): void {
  const practice = realPractice();
  const parts = debriefParts(practice, state, debrief);
  const lines = wordReply({ parts }, wordingOf(state)).blocks.flatMap((block) => block.lines);
  const count = (start: string) => lines.filter((line) => line.startsWith(start)).length;
  const kinds = (pairs: readonly string[]) => new Set(pairs.map((pair) => pair.split('@')[0])).size;
  expect(count('Missed: ')).toBe(kinds(debrief.findings.missed));
  expect(count('Not so: ')).toBe(kinds(debrief.findings.invented));
  expect(count('Caution forgotten: ')).toBe(debrief.cautions.forgotten.length);
  expect(count('A promise that must not be made: ')).toBe(debrief.promises.length);
  expect(count('Right: ')).toBe(debrief.advice.right.length);
  expect(count('Right, but too costly first: ')).toBe(debrief.advice.costlyFirst.length);
  expect(count('You passed over ')).toBe(debrief.order.passedOver.length);
  expect(lines.filter((line) => line.includes("(Cohen's kappa)"))).toHaveLength(1);
  expect(lines.filter((line) => /undefined|[{}]/.test(line))).toEqual([]);
}

/** What every trainee is told, whatever they did: worked out again from what they set out to do. */
function checkCommon({ state, visits, recorded, invented, seed }: Played & { seed: number }) {
  const practice = realPractice();
  const debrief = makeDebrief(practice, state);
  const { assessment } = knownHouse(practice, state);
  const key = assessment.found.map((one) => one.id);
  const stops = stopsOf(practice, state).map((stop) => stop.id);
  const { findings, order } = debrief;
  const caught = key.filter((id) => recorded.includes(id));
  const missed = key.filter((id) => !recorded.includes(id));
  expect(sorted(findings.caught), `caught, house ${seed}`).toEqual(sorted(caught));
  expect(sorted(findings.missed), `missed, house ${seed}`).toEqual(sorted(missed));
  expect(sorted(findings.invented), `invented, house ${seed}`).toEqual(sorted(invented));
  expect(findings.unsettled).toEqual([]);
  expect(order.passedOver).toEqual(passedBy(stops, visits));
  expect(order.neverVisited).toEqual(stops.filter((stop) => !visits.includes(stop)));
  if (debrief.kappa.kind === 'kappa') {
    const [a, b, c] = [caught.length, invented.length, missed.length];
    expect(debrief.kappa.kappa).toBeCloseTo(kappa(a, b, c, debrief.kappa.pairs - a - b - c), 10);
  } else expect(caught.length + invented.length + missed.length).toBe(0);
  checkWords(state, debrief);
  expect(debrief.next.length).toBeLessThanOrEqual(3);
  for (const thing of debrief.next)
    expect(practice.programme.checklist.flow.sources.some((source) => source.id === thing.source)).toBe(true);
  return { debrief, assessment };
}

/** For each advice in turn: whether a cheaper job that the program does before, on the same ways in, was still unsaid. */
function costlyAgain(
  played: Played,
  ranked: ReturnType<typeof knownHouse>['assessment']['ranked'],
): string[] {
  const lane = (position: number) => laneOrder.indexOf(ranked[position]?.proposal.lane ?? 'hand');
  const positions = played.advised.map((id) => ranked.findIndex((job) => job.proposal.id === id));
  return positions.flatMap((position, time) => {
    const job = ranked[position];
    const costly = ranked.some(
      (other, at) =>
        job !== undefined &&
        !positions.slice(0, time).includes(at) &&
        lane(at) < lane(position) &&
        other.turn < job.turn &&
        other.share > 0 &&
        other.lessens.some((way) => job.lessens.includes(way)),
    );
    return costly && job ? [job.proposal.action.id] : [];
  });
}

describe('the debrief of scripted trainees over 500 made-up houses', () => {
  it('has nothing to say against the perfect one', () => {
    for (const played of sessionsOf('perfect')) {
      const { debrief, assessment } = checkCommon(played);
      const { advice, cautions, order, findings } = debrief;
      expect(order.danger).toBe('first');
      expect(order.adviceEarly).toBe(false);
      expect(findings.unseen, `unseen, house ${played.seed}`).toEqual([]);
      expect(advice.right).toHaveLength(assessment.ranked.length);
      expect([
        advice.costlyFirst,
        advice.notCalledFor,
        advice.brokenLimits,
        advice.wrong,
        advice.unsaid,
      ]).toEqual([[], [], [], [], []]);
      expect(cautions.forgotten).toEqual([]);
      expect([debrief.promises, debrief.unsafe, debrief.next]).toEqual([[], [], []]);
      expect(debrief.alarm).toBe(played.state.house.alarmAt === undefined ? 'none' : 'answered');
    }
  }, 240_000);

  it('tells the hasty one what was left out, taken on trust and forgotten', () => {
    for (const played of sessionsOf('hasty')) {
      const { debrief, assessment } = checkCommon(played);
      const advised = assessment.ranked.filter((job) => played.advised.includes(job.proposal.id));
      expect(debrief.order.danger).toBe('never');
      expect(sorted(debrief.findings.unseen)).toEqual(sorted(debrief.findings.caught));
      expect(debrief.order.adviceEarly).toBe(advised.length > 0);
      expect(sorted(debrief.cautions.forgotten.map((one) => one.caution))).toEqual(
        sorted(new Set(advised.flatMap((job) => job.proposal.cautions))),
      );
      expect(debrief.advice.costlyFirst.map((one) => one.action)).toEqual(
        costlyAgain(played, assessment.ranked),
      );
      const { alarmAt } = played.state.house;
      const heard = alarmAt !== undefined && played.visits.includes(alarmAt);
      expect(debrief.alarm).toBe(heard ? 'ignored' : 'none');
    }
  }, 240_000);

  it('tells the inventing one what is not so, the promise, the wrong advice and the costly jobs said first', () => {
    for (const played of sessionsOf('inventing')) {
      const { debrief, assessment } = checkCommon(played);
      expect(debrief.order.danger).toBe('late');
      expect(debrief.promises).toEqual([promised]);
      expect(debrief.advice.wrong).toEqual(['quarter-mesh']);
      expect(debrief.unsafe).toEqual(['roof']);
      expect(debrief.advice.costlyFirst.map((one) => one.action)).toEqual(
        costlyAgain(played, assessment.ranked),
      );
      expect(debrief.advice.right).toHaveLength(played.advised.length - debrief.advice.costlyFirst.length);
      expect(debrief.next.map((thing) => thing.kind)).toContain('unsafe');
      expect(debrief.next.map((thing) => thing.kind)).toContain('promise');
    }
  }, 240_000);

  it('tells the one who walks out of order which parts were passed over', () => {
    for (const played of sessionsOf('outOfOrder')) {
      const { debrief } = checkCommon(played);
      expect(debrief.order.danger).toBe('first');
      expect(debrief.order.neverVisited).toEqual([]);
      expect(debrief.findings.unseen).toEqual([]);
      expect(debrief.advice.costlyFirst).toEqual([]);
    }
  }, 240_000);
});

import { describe, expect, it } from 'vitest';
import type { AnswerSheet } from '../../src/answers/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { type ToFindOut, toFindOut } from '../../src/planning/to-find-out.ts';
import { visitBrief } from '../../src/planning/visit-brief.ts';
import { checklist, sheetOf } from './houses.ts';

const findOut = (sheet: AnswerSheet): ToFindOut[] => toFindOut(checklist, sheet, assess(checklist, sheet));
const notSure = { status: 'notSure' } as const;

describe('what to find out', () => {
  it('works out what knowing the roof would change, by hand from its priors', () => {
    const known = sheetOf('houses/kiln-road-3');
    const sheet = { ...known, 'openings.glass': notSure };
    const one = findOut(sheet).find(({ key }) => key === 'openings.glass');
    const question = checklist.index.questions.get('openings.glass');
    // Built in 1954: the prior for houses before 1980.
    const now = assess(checklist, sheet);
    const priors = question?.priors?.filter((prior) => prior.basis.length > 0) ?? [];
    expect(priors.length).toBeGreaterThan(0);
    const stakes = priors.map(({ are }) =>
      Object.entries(are).reduce((sum, [id, probability]) => {
        const then = assess(checklist, { ...sheet, 'openings.glass': { status: 'given', value: id } });
        return sum + probability * Math.max(0, then.exposure - then.left - (now.exposure - now.left));
      }, 0),
    );
    expect(stakes.some((stake) => Math.abs(stake - (one?.stake ?? -1)) < 1e-9)).toBe(true);
  });

  it('puts first what would change the first three lines of the list, then what is at stake', () => {
    const list = findOut(sheetOf('houses/weir-cottages-5'));
    expect(list.length).toBeGreaterThan(10);
    list.slice(1).forEach((one, at) => {
      const before = list[at] as ToFindOut;
      expect(before.change).toBeGreaterThanOrEqual(one.change);
      if (before.change === one.change) expect(before.stake).toBeGreaterThanOrEqual(one.stake);
    });
    for (const { change, moves, stake } of list) {
      expect(Math.min(change, moves, stake)).toBeGreaterThanOrEqual(0);
      expect(moves).toBeLessThanOrEqual(3);
    }
  });

  it('counts a change of the first three only where an answer changes them', () => {
    const known = sheetOf('houses/kiln-road-3');
    const roof = findOut({ ...known, 'roof.covering': notSure }).find(({ key }) => key === 'roof.covering');
    const paint = findOut({ ...known, 'eaves.paint': notSure }).find(({ key }) => key === 'eaves.paint');
    expect(roof?.moves).toBeGreaterThan(0);
    expect(paint).toMatchObject({ change: 0, moves: 0, stake: 0 });
  });

  it('is empty where everything is known', () => {
    expect(findOut(sheetOf('houses/larkspur-way-41'))).toEqual([]);
  });
});

describe('the brief for a visit', () => {
  const sheet = sheetOf('houses/weir-cottages-5');
  const told = { status: 'given', value: 'wood', how: 'told' } as const;
  const brief = visitBrief(
    checklist,
    { ...sheet, 'siding.kind': told },
    findOut({ ...sheet, 'siding.kind': told }),
  );

  it('goes in the order of the walk and names each answer once', () => {
    const stops = checklist.flow.stops.map((one) => one.id);
    const places = brief.stops.map(({ stop }) => stops.indexOf(stop));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    const keys = brief.stops.flatMap(({ toCheck, reported }) =>
      [...toCheck, ...reported].map((one) => one.key),
    );
    expect(new Set(keys).size).toBe(keys.length);
    for (const { stop, toCheck, reported } of brief.stops) {
      for (const { step } of [...toCheck, ...reported]) expect(step.question.stop).toBe(stop);
    }
  });

  it('has what was told or guessed looked at again, with what was reported', () => {
    const checks = brief.stops.flatMap((one) => one.toCheck);
    expect(checks.find((one) => one.key === 'siding.kind')).toMatchObject({
      because: 'told',
      reported: told,
      change: undefined,
    });
    expect(brief.stops.flatMap((one) => one.reported).some((one) => one.how === 'notSaid')).toBe(true);
  });

  it('keeps to one page: the unknown answers that would change most, and how many are left out', () => {
    const unknown = findOut(sheet);
    const short = visitBrief(checklist, sheet, unknown, 5);
    const kept = short.stops.flatMap((one) => one.toCheck).filter((one) => one.stake !== undefined);
    expect(kept.map((one) => one.key).sort()).toEqual(
      unknown
        .slice(0, 5)
        .map((one) => one.key)
        .sort(),
    );
    expect(short.leftOut).toBe(unknown.length - 5);
    expect(short.first).toEqual(unknown.slice(0, 5).map((one) => one.key));
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { AnswerSheet } from '../../src/answers/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { compareSheets } from '../../src/practice/agreement/compare-sheets.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import { realPractice } from './practice-for-tests.ts';

const practice = realPractice();
const { checklist } = practice.programme;
const path = 'tests/houses/fernhollow-lane-12.yaml';
const house = readAnswers(checklist.index, path, readFileSync(path, 'utf8')).sheet;

const changed = (change: AnswerSheet): AnswerSheet => ({ ...house, ...change });
const side = (value: string) => ({ status: 'given', value }) as const;

describe('two walks of one house', () => {
  it('agree on everything with themselves', () => {
    const agreement = compareSheets(checklist, house, house);
    expect(agreement.whole).toMatchObject({ kind: 'kappa', kappa: 1, interval: undefined });
    expect(agreement.stops.flatMap((stop) => [...stop.answers, ...stop.findings])).toEqual([]);
  });

  it('show where an answer and the finding that follows from it differ, under its stop and side', () => {
    const mesh = house['vents.high-mesh'];
    if (mesh?.status !== 'bySide') throw new Error('the house has high vents');
    const other = changed({ 'vents.high-mesh': { ...mesh, sides: { ...mesh.sides, left: side('eighth') } } });
    const agreement = compareSheets(checklist, house, other);
    const vents = agreement.stops.find((stop) => stop.stop === 'vents');
    expect(vents?.answers.map(({ question, sides }) => [question, sides])).toEqual([
      ['vents.high-mesh', ['left']],
    ]);
    expect(vents?.findings.map(({ pair, foundBy }) => [pair.id, foundBy])).toEqual([
      ['vents.coarse-high@left', 'first'],
    ]);
    expect(vents?.kappa.kind === 'kappa' && vents.kappa.kappa).toBeLessThan(1);
    expect(agreement.stops.find((stop) => stop.stop === 'siding')?.kappa).toMatchObject({ kappa: 1 });
  });

  it('leave out of kappa what one of them does not know, and say how much that is', () => {
    const other = changed({ 'vents.dryer': { status: 'notSure' } });
    const agreement = compareSheets(checklist, house, other);
    const vents = agreement.stops.find((stop) => stop.stop === 'vents');
    expect(vents?.open).toBeGreaterThan(0);
    expect(vents?.findings).toEqual([]);
    expect(vents?.answers.map((one) => one.question)).toContain('vents.dryer');
  });

  it('count each finding that differs once, over made-up houses', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const [a, b] = [
        makeHouse(practice.maker, seed, 'hard').sheet,
        makeHouse(practice.maker, seed + 1000, 'hard').sheet,
      ];
      const found = (sheet: AnswerSheet) => new Set(assess(checklist, sheet).found.map((one) => one.id));
      const [one, other] = [found(a), found(b)];
      const differ = [...new Set([...one, ...other])].filter((id) => one.has(id) !== other.has(id));
      const listed = compareSheets(checklist, a, b).stops.flatMap((stop) =>
        stop.findings.map((each) => each.pair.id),
      );
      expect(listed.toSorted()).toEqual(differ.toSorted());
    }
  });

  it('give the same kappa whichever comes first', () => {
    const [a, b] = [
      makeHouse(practice.maker, 3, 'ordinary').sheet,
      makeHouse(practice.maker, 4, 'ordinary').sheet,
    ];
    const kappa = (x: AnswerSheet, y: AnswerSheet) => {
      const { whole } = compareSheets(checklist, x, y);
      return whole.kind === 'kappa' ? whole.kappa : Number.NaN;
    };
    expect(kappa(a, b)).toBeCloseTo(kappa(b, a), 12);
  });
});

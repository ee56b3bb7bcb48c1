import { describe, expect, it } from 'vitest';
import { explainReason, readArea, readNumber, readSlope, readYear } from '../../src/quantities/index.ts';

describe('readNumber', () => {
  it.each([
    ['0', 0],
    ['zero', 0],
    ['seven', 7],
    ['nineteen', 19],
    ['forty two', 42],
    ['ninety-nine', 99],
    ['1,978', 1978],
    ['12 500', 12_500],
    ['two hundred and five', 205],
    ['two thousand five', 2005],
    ['a dozen', 12],
    ['3.5', 3.5],
    ['two and a half', 2.5],
  ])('reads %s as %f', (said, value) => {
    expect(readNumber(said, { unsafeEnd: 'low' })).toMatchObject({
      kind: 'number',
      value,
      approximate: false,
    });
  });

  it('reads every number from zero to ninety-nine in words', () => {
    const ones = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
    const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
    for (let value = 20; value < 100; value += 1) {
      const said = `${tens[Math.floor(value / 10)]} ${ones[value % 10]}`.trim();
      expect(readNumber(said, { unsafeEnd: 'low' })).toMatchObject({ value });
      expect(readNumber(said.replace(' ', '-'), { unsafeEnd: 'low' })).toMatchObject({ value });
    }
  });

  it.each([
    ['about 6', 6, 6, true],
    ['2 or 3', 2, 3, false],
    ['less than ten', 0, 10, false],
  ])('reads %s with its ends and whether it is rough', (said, low, high, approximate) => {
    expect(readNumber(said, { unsafeEnd: 'low' })).toMatchObject({ value: low, approximate });
    expect(readNumber(said, { unsafeEnd: 'high' })).toMatchObject({ value: high });
  });

  it.each([
    ['-3', 'negative'],
    ['lots', 'noNumber'],
    ['5 ft', 'otherDimension'],
    ['', 'empty'],
  ])('refuses %j because it is %s', (said, reason) => {
    expect(readNumber(said, { unsafeEnd: 'low' })).toMatchObject({ kind: 'notANumber', reason });
  });
});

describe('readYear', () => {
  it.each([
    ['1978', 1978, 1978],
    ['built in 1978', 1978, 1978],
    ['about 1950', 1950, 1950],
    ['in 1950', 1950, 1950],
    ['nineteen seventy-eight', 1978, 1978],
    ['nineteen oh five', 1905, 1905],
    ['twenty twenty', 2020, 2020],
    ['the 70s', 1970, 1979],
    ['1960s', 1960, 1969],
    ["the '80s", 1980, 1989],
    ['between 1970 and 1980', 1970, 1980],
    ['before 1978', 1600, 1978],
    ['after 2008', 2008, 2026],
  ])('reads %s as %i to %i', (said, low, high) => {
    expect(readYear(said, { unsafeEnd: 'low', most: 2026 })).toMatchObject({ value: low });
    expect(readYear(said, { unsafeEnd: 'high', most: 2026 })).toMatchObject({ value: high });
  });

  it.each([
    ['1492', 'tooSmall'],
    ['2031', 'tooLarge'],
    ['old', 'noNumber'],
  ])('refuses %s', (said, reason) => {
    expect(readYear(said, { unsafeEnd: 'low', most: 2026 })).toMatchObject({ kind: 'notANumber', reason });
  });
});

describe('readSlope', () => {
  it.each([
    ['20%', 20],
    ['20 percent', 20],
    ['about 20 %', 20],
    ['11 degrees', 19.438_030_913_77],
    ['11°', 19.438_030_913_77],
    ['45 degrees', 100],
    ['rises 4 ft in 10', 40],
    ['rises 4 feet in 10 feet', 40],
    ['4 in 12', 100 / 3],
    ['4 in in 12 in', 100 / 3],
    ['4:12', 100 / 3],
    ['4/12', 100 / 3],
    ['1:3', 100 / 3],
    ['one in three', 100 / 3],
    ['4 inches per foot', 100 / 3],
    ['1 foot every 10 feet', 10],
    ['drops 4 feet over 10 feet', 40],
    ['1 m in 4 m', 25],
    ['flat', 0],
    ['level', 0],
    ['0', 0],
  ])('reads %s as %f percent', (said, value) => {
    const read = readSlope(said);
    expect(read.kind).toBe('slope');
    expect(read.kind === 'slope' && read.percent).toBeCloseTo(value, 9);
  });

  it('takes a bare number in the unit asked for and says so', () => {
    expect(readSlope('20')).toMatchObject({ percent: 20, assumedUnit: 'percent' });
    expect(readSlope('45', { unit: 'degree' })).toMatchObject({ degrees: 45, assumedUnit: 'degree' });
  });

  it('takes a range at its steep end', () => {
    expect(readSlope('20-30%')).toMatchObject({ kind: 'range', percent: 30 });
    expect(readSlope('20-30%', { unsafeEnd: 'low' })).toMatchObject({ percent: 20 });
  });

  it.each([
    ['3:1', 'ambiguousRatio'],
    ['90 degrees', 'tooLarge'],
    ['-5%', 'negative'],
    ['steep', 'noNumber'],
    ['4 in 0', 'notFinite'],
    ['5 gallons', 'otherDimension'],
  ])('refuses %s because it is %s', (said, reason) => {
    expect(readSlope(said)).toMatchObject({ kind: 'notASlope', reason });
  });
});

describe('readArea', () => {
  it.each([
    ['144 square inches', 0.092_903_04],
    ['1 sq ft', 0.092_903_04],
    ['12 ft2', 12 * 0.092_903_04],
    ['12 ft²', 12 * 0.092_903_04],
    ['1200', 1200 * 0.092_903_04],
    ['1,200 square feet', 1200 * 0.092_903_04],
    ['half an acre', 21_780 * 0.092_903_04],
    ['a quarter acre', 10_890 * 0.092_903_04],
    ['10 m2', 10],
    ['2 hectares', 20_000],
    ['10 by 12 ft', 120 * 0.092_903_04],
    ['10 x 12 feet', 120 * 0.092_903_04],
    ['8 ft x 6 in', 4 * 0.092_903_04],
    ['14 x 8 in', (112 / 144) * 0.092_903_04],
    ['2 m by 3 m', 6],
  ])('reads %s as %f square metres', (said, value) => {
    const read = readArea(said, { unsafeEnd: 'low' });
    expect(read.kind).toBe('area');
    expect(read.kind === 'area' && read.squareMetres).toBeCloseTo(value, 9);
  });

  it.each([
    ['5 ft', 'otherDimension'],
    ['-4 sq ft', 'negative'],
    ['big', 'noNumber'],
  ])('refuses %s because it is %s', (said, reason) => {
    expect(readArea(said, { unsafeEnd: 'low' })).toMatchObject({ kind: 'notAnArea', reason });
  });
});

describe('explainReason', () => {
  it('names the word that could not be read', () => {
    expect(explainReason({ kind: 'notRead', reason: 'notUnderstood', detail: 'banana' })).toContain('banana');
  });
});

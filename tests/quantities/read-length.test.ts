import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ENGLISH_NUMBER_WORDS, type ReadLengthOptions, readLength } from '../../src/quantities/index.ts';

const INCH = 0.0254;
const FOOT = 0.3048;

type Row = [said: string, metres: number, more?: { approximate?: boolean; assumedUnit?: string }];

const exact: readonly Row[] = [
  ['1/8"', INCH / 8],
  ['1/8 in', INCH / 8],
  ['1/16 in', INCH / 16],
  ['1/4 inch', INCH / 4],
  ['⅛ in', INCH / 8],
  ['⅛”', INCH / 8],
  ['1/8″', INCH / 8],
  ['an eighth of an inch', INCH / 8],
  ['one-eighth inch', INCH / 8],
  ['1/8th of an inch', INCH / 8],
  ['1/8th inch mesh', INCH / 8],
  ['quarter-inch', INCH / 4],
  ['a quarter inch', INCH / 4],
  ['three quarters of an inch', 0.75 * INCH],
  ['half inch', INCH / 2],
  ['half an inch', INCH / 2],
  ['a sixteenth of an inch', INCH / 16],
  ['2 1/2 in', 2.5 * INCH],
  ['2-1/2 inches', 2.5 * INCH],
  ['2½ in', 2.5 * INCH],
  ['an inch and a half', 1.5 * INCH],
  ['an inch and three quarters', 1.75 * INCH],
  ['two and three quarters inches', 2.75 * INCH],
  ['6in', 6 * INCH],
  ['six inches', 6 * INCH],
  ['6"', 6 * INCH],
  ["6''", 6 * INCH],
  ['2\'6"', 2.5 * FOOT],
  ['2’6”', 2.5 * FOOT],
  ['2\'-6"', 2.5 * FOOT],
  ["2' 6", 2.5 * FOOT],
  ['2′ 6″', 2.5 * FOOT],
  ['2 foot 6', 2.5 * FOOT],
  ['2ft6in', 2.5 * FOOT],
  ['2 ft. 6 in.', 2.5 * FOOT],
  ['2 feet and 6 inches', 2.5 * FOOT],
  ['2 feet, 6 inches', 2.5 * FOOT],
  ['5 ft 6 1/2 in', 5 * FOOT + 6.5 * INCH],
  ['two and a half feet', 2.5 * FOOT],
  ['half a foot', 0.5 * FOOT],
  ['a foot and a half', 1.5 * FOOT],
  ['two foot six', 2.5 * FOOT],
  ['a foot', FOOT],
  ['one foot', FOOT],
  ['ten feet', 10 * FOOT],
  ['twenty-five ft', 25 * FOOT],
  ['twenty five feet', 25 * FOOT],
  ['a hundred feet', 100 * FOOT],
  ['one hundred and twenty feet', 120 * FOOT],
  ['1,200 ft', 1200 * FOOT],
  ['3 yards', 9 * FOOT],
  ['a 5 ft gap', 5 * FOOT],
  ["it's 12 feet away", 12 * FOOT],
  ['10 feet from the house', 10 * FOOT],
  ['10 feet from house', 10 * FOOT],
  ['6 ft above the deck', 6 * FOOT],
  ['2 feet 6 inches to the soffit', 2.5 * FOOT],
  ['10 feet behind the garage', 10 * FOOT],
  ['10 feet in front of the porch', 10 * FOOT],
  ['touching the wall', 0],
  ['80cm', 0.8],
  ['0.5 m', 0.5],
  ['0,5 m', 0.5],
  ['2,5 m', 2.5],
  ['.5 m', 0.5],
  ['1m50', 1.5],
  ['1 m 50 cm', 1.5],
  ['1.2.3 m', Number.NaN],
  ['3mm', 0.003],
  ['3.2 millimetres', 0.0032],
  ['a metre and a half', 1.5],
  ['0 ft', 0],
  ['none', 0],
  ['zero', 0],
  ['touching', 0],
  ['no gap', 0],
  ["they're touching", 0],
  ['right against the wall', 0],
];

const rough: readonly Row[] = [
  ['about ten feet', 10 * FOOT],
  ['roughly 3 m', 3],
  ['~5 ft', 5 * FOOT],
  ['5 ft or so', 5 * FOOT],
  ['maybe 5 feet', 5 * FOOT],
  ['I think about a foot', FOOT],
  ['5-ish feet', 5 * FOOT],
  ['10 feet, I guess', 10 * FOOT],
];

describe('readLength', () => {
  it.each(exact.filter(([, value]) => !Number.isNaN(value)))('reads %s as %f m', (said, value) => {
    const read = readLength(said, { unsafeEnd: 'low' });
    expect(read).toMatchObject({ kind: 'length', said, approximate: false });
    expect(read.kind === 'length' && read.metres).toBeCloseTo(value, 12);
    expect(read).not.toHaveProperty('assumedUnit');
  });

  it.each(rough)('reads %s as about %f m', (said, value) => {
    const read = readLength(said, { unsafeEnd: 'low' });
    expect(read).toMatchObject({ kind: 'length', approximate: true });
    expect(read.kind === 'length' && read.metres).toBeCloseTo(value, 12);
  });

  it.each<[string, ReadLengthOptions['unit'], number]>([
    ['5', undefined, 5 * FOOT],
    ['5', 'ft', 5 * FOOT],
    ['1/8', 'in', INCH / 8],
    ['1.5', 'm', 1.5],
    ['six', 'in', 6 * INCH],
    ['a half', 'in', INCH / 2],
  ])('gives the bare number %s the default unit %s and says so', (said, unit, value) => {
    const read = readLength(said, { unsafeEnd: 'low', ...(unit === undefined ? {} : { unit }) });
    expect(read).toMatchObject({ kind: 'length', assumedUnit: unit ?? 'ft' });
    expect(read.kind === 'length' && read.metres).toBeCloseTo(value, 12);
  });

  it.each<[string, number, number]>([
    ['5-10 ft', 5, 10],
    ['5 - 10 ft', 5, 10],
    ['5–10 ft', 5, 10],
    ['5 to 10', 5, 10],
    ['between 5 and 10 feet', 5, 10],
    ['from five to ten feet', 5, 10],
    ['10 to 5 ft', 5, 10],
    ['5 or 6 feet', 5, 6],
    ['a foot or two', 1, 2],
    ["2'-3'", 2, 3],
    ['6 in to 2 ft', 0.5, 2],
    ['a few feet', 3, 5],
    ['less than 5 ft', 0, 5],
    ['under a foot', 0, 1],
    ['within 5 feet', 0, 5],
    ['5 feet or less', 0, 5],
    ['no more than 5 ft', 0, 5],
    ['<5ft', 0, 5],
    ['more than 5 but less than 10 ft', 5, 10],
    ['nearly 5 ft', 4.5, 5],
    ['a little less than 5 feet', 4.5, 5],
    ['7 to 8 feet to the eave', 7, 8],
  ])('takes the range %s at its unsafe end', (said, lowFeet, highFeet) => {
    const low = readLength(said, { unsafeEnd: 'low' });
    const high = readLength(said, { unsafeEnd: 'high' });
    expect(low.kind).toBe('range');
    expect(low.kind === 'range' && low.metres).toBeCloseTo(lowFeet * FOOT, 12);
    expect(high.kind === 'range' && high.metres).toBeCloseTo(highFeet * FOOT, 12);
  });

  it.each([
    'over 30 feet',
    '30+ ft',
    'at least 30 ft',
    '30 ft or more',
    '30 or more feet',
    '>30 ft',
    'more than thirty feet',
  ])('keeps the open end of %s open and takes a value beyond the bound only when high is unsafe', (said) => {
    const low = readLength(said, { unsafeEnd: 'low' });
    expect(low).toMatchObject({ kind: 'range' });
    expect(low).not.toHaveProperty('highMetres');
    expect(low.kind === 'range' && low.metres).toBeCloseTo(30 * FOOT, 12);
    const high = readLength(said, { unsafeEnd: 'high' });
    expect(high.kind === 'range' && high.metres).toBeGreaterThan(30 * FOOT);
  });

  it('takes a couple of feet as two', () => {
    const read = readLength('a couple of feet', { unsafeEnd: 'low' });
    expect(read.kind === 'length' && read.metres).toBeCloseTo(2 * FOOT, 12);
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['-5 ft', 'negative'],
    ['minus five feet', 'negative'],
    ['1e400 ft', 'severalValues'],
    ['99999999 ft', 'tooLarge'],
    ['NaN', 'noNumber'],
    ['infinity', 'noNumber'],
    ['1/0 in', 'notFinite'],
    ['1.2.3 m', 'notFinite'],
    ['5 sq ft', 'otherDimension'],
    ['12 m²', 'otherDimension'],
    ['5 gallons', 'otherDimension'],
    ['20 %', 'otherDimension'],
    ['far away', 'noNumber'],
    ['about a banana', 'noNumber'],
    ['5 bananas', 'notUnderstood'],
    ['16ths', 'notUnderstood'],
    ['5 ft from here and 3 ft from there', 'severalValues'],
    ['5 ft on the left, 3 ft on the right', 'severalValues'],
    ['5 ft 3 ft', 'severalValues'],
  ])('refuses %j because it is %s', (said, reason) => {
    expect(readLength(said, { unsafeEnd: 'low' })).toMatchObject({ kind: 'notALength', reason });
  });

  it('reads with the words of another language when they are given', () => {
    const words = {
      ...ENGLISH_NUMBER_WORDS,
      numbers: { zwei: 2 },
      to: ['bis'],
      units: { ...ENGLISH_NUMBER_WORDS.units, m: ['m', 'meter'] },
    };
    const read = readLength('zwei bis 3 meter', { unsafeEnd: 'low', words });
    expect(read).toMatchObject({ kind: 'range', metres: 2, highMetres: 3 });
  });
});

describe('reading anything at all', () => {
  it('never throws, and gives only lengths that are finite and not below zero', () => {
    const words =
      'two half a an foot feet ft in and to between about less than more or 5 1/8 2.5 , - \' " by ½ few none minus'.split(
        ' ',
      );
    const text = fc.oneof(
      fc.string(),
      fc.array(fc.constantFrom(...words), { maxLength: 8 }).map((list) => list.join(' ')),
    );
    fc.assert(
      fc.property(text, fc.constantFrom<'low' | 'high'>('low', 'high'), (said, unsafeEnd) => {
        const read = readLength(said, { unsafeEnd });
        if (read.kind === 'notALength') return;
        expect(Number.isFinite(read.metres)).toBe(true);
        expect(read.metres).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1000 },
    );
  });
});

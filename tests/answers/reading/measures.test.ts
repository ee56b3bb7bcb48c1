import { describe, expect, it } from 'vitest';
import { say } from './fixture.ts';

type Row = readonly [text: string, reading: string];

const FOOT = 0.3048;
const metres = (feet: number) => String(Math.round(feet * FOOT * 1e4) / 1e4);

const height: readonly Row[] = [
  ['10 ft', metres(10)],
  ['10', `${metres(10)}; in ft`],
  ['about ten feet', metres(10)],
  ["30'", metres(30)],
  ['12 foot 6', metres(12.5)],
  ['3 m', '3'],
  ['350 cm', '3.5'],
  ['10 to 15 ft', `${metres(15)}; of ${metres(10)}..${metres(15)}`],
  ['between 10 and 15 feet', `${metres(15)}; of ${metres(10)}..${metres(15)}`],
  ['i think 20 ft', `${metres(20)}~guess`],
  ['not sure, about 20 ft', `${metres(20)}~guess`],
  ["i don't know, maybe 20 ft", `${metres(20)}~guess`],
  ['1 ft', '! outside'],
  ['400 ft', '! outside'],
  ['tall', '! notAMeasure'],
  ['that one is 20 ft', metres(20)],
  ['the one in the back', '! notAMeasure'],
  ['20 100', '! notAMeasure'],
  ['20 30', '! notAMeasure'],
  ['20 ft tall and 10 wide', '! notAMeasure'],
  ['15 years old', '! notAMeasure'],
  ['2O feet', metres(20)],
  ['for feet', `${metres(4)}; misspelt`],
  ['20, maybe 25 feet', `${metres(25)}~guess; of ${metres(20)}..${metres(25)}`],
  ['10 kg', '! notAMeasure'],
  ['-4 ft', '! notAMeasure'],
  ['not sure', '?'],
  ["can't tell", '?'],
  ['skip', 'skip'],
];

const gap: readonly Row[] = [
  ['1/4 in', '0.0064'],
  ['1/8"', '0.0032'],
  ['quarter inch', '0.0064'],
  ['1/4', '0.0064; in in'],
  ['2', '0.0508; in in'],
  ['6 mm', '0.006'],
  ['no gap', '0'],
  ['none', '0'],
  ['tight', '0'],
  ['a pencil', '0.0064'],
  ['about a pencil', '0.0064'],
  ['pencil', '0.0064'],
  ['as wide as a finger', '0.0191'],
  ['finger', '0.0191'],
  ['fnger', '0.0191; misspelt'],
  ['a', '0'],
  ['b', '0.0064'],
  ['c)', '0.0191'],
  ['option 2', '0.0064'],
  ['3)', '0.0191'],
  ['the second one', '0.0064'],
  ['the last one', '0.0191'],
  ['3 ft', '! outside'],
  ['the one by the door', '! notAMeasure'],
  ['two fingers', '! notAMeasure'],
  ['2 fingers wide', '! notAMeasure'],
  ['a finger and a half', '! notAMeasure'],
  ['half a finger', '! notAMeasure'],
  ['wider than a finger', '0.0192; of 0.0191..'],
  ['less than a pencil', '0.0064; of 0..0.0064'],
  ['no more than a pencil', '0.0064; of 0..0.0064'],
  ['a pencil or more', '0.0064; of 0.0064..'],
  ['a pencil or a finger', '! ambiguous 1/4 in 3/4 in'],
];

const houses: readonly Row[] = [
  ['10 ft all round', 'front 3.048, left 3.048, back 3.048, right 3.048'],
  ['30 feet', 'front 9.144, left 9.144, back 9.144, right 9.144'],
  ["front 10 ft, left 3 ft, back 30', right not sure", 'front 3.048, left 0.9144, back 9.144, right ?'],
  ['left 10ft right 12ft front 60ft back not sure', 'front 18.288, left 3.048, back ?, right 3.6576'],
  ['10 feet front and back, 3 feet on the sides', 'front 3.048, left 0.9144, back 3.048, right 0.9144'],
  ['12 feet on both sides, 80 front and back', 'front 24.384, left 3.6576, back 24.384, right 3.6576; in ft'],
  ['10, 3, 30, 12', 'front 3.048, left 0.9144, back 9.144, right 3.6576; in ft'],
  ['10,3,30,12', 'front 3.048, left 0.9144, back 9.144, right 3.6576; in ft'],
  ['10 in front, 20 in back', 'front 3.048, back 6.096; in ft; without left right'],
  ['10 in the front and 5 in the back', 'front 3.048, back 1.524; in ft; without left right'],
  ['front 2 ft 6, left 3 ft', 'front 0.762, left 0.9144; without back right'],
  ['2 feet, 6 inches front', 'front 0.762; without left back right'],
  ["10' on the left and 12' on the right", 'left 3.048, right 3.6576; without front back'],
  ['front 10ft. back 5ft.', 'front 3.048, back 1.524; without left right'],
  ['10-15 ft front', 'front 3.048; of 3.048..4.572; without left back right'],
  [
    'between 10 and 15 ft at the front and back',
    'front 3.048, back 3.048; of 3.048..4.572; without left right',
  ],
  ['1,200 ft front', 'front 365.76; without left back right'],
  ['2,5 m front', 'front 2.5; without left back right'],
  ['20 ft left, none in sight elsewhere', 'front 91.44, left 6.096, back 91.44, right 91.44'],
  ['front ~40 ft, rest 20 ft', 'front 12.192, left 6.096, back 6.096, right 6.096'],
  ['20 ft except 10 ft at the back', 'front 6.096, left 6.096, back 3.048, right 6.096'],
  ['left 10 ft, not sure about the rest', 'front ?, left 3.048, back ?, right ?'],
  ['not sure', 'front ?, left ?, back ?, right ?'],
  ['front tall', '! notAMeasure'],
  ['20 30 40 70', 'front 6.096, left 9.144, back 12.192, right 21.336; in ft'],
  ['20 30 none in sight 70', 'front 6.096, left 9.144, back 91.44, right 21.336; in ft'],
  ['20 ft 30 ft none in sight and 70 ft', 'front 6.096, left 9.144, back 91.44, right 21.336'],
  ['none in sight, none in sight, 20, 10', 'front 91.44, left 91.44, back 6.096, right 3.048; in ft'],
  ['twenty five thirty ten fifty', 'front 7.62, left 9.144, back 3.048, right 15.24; in ft'],
  ['20, ?, 30, not sure', 'front 6.096, left ?, back 9.144, right ?; in ft'],
  ['20 30 none in sight', '! notAMeasure'],
  ['20 100', '! notAMeasure'],
  ['the one on the left is 10 ft', 'left 3.048; without front back right'],
  ['left over 50', 'left 15.24; in ft; of 15.24..; without front back right'],
  ['front 60, back 40, sides 10', 'front 18.288, left 3.048, back 12.192, right 3.048; in ft'],
];

const year: readonly Row[] = [
  ['1975', '1975'],
  ['about 1975', '1975'],
  ['built in 1962', '1962'],
  ['nineteen eighty-seven', '1987'],
  ['the seventies', '1970; of 1970..1979'],
  ['the 70s', '1970; of 1970..1979'],
  ['1950s', '1950; of 1950..1959'],
  ['between 1960 and 1970', '1960; of 1960..1970'],
  ['1492', '! outside'],
  ['3000', '! outside'],
  ['old', '! notAMeasure'],
  ['no idea', '?'],
];

const slope: readonly Row[] = [
  ['20%', '20'],
  ['20 percent', '20'],
  ['flat', '0'],
  ['gentle', '10'],
  ['c', '30'],
  ['4 in 12', '33.3333'],
  ['45 degrees', '100'],
  ['dunno', '?'],
];

describe('lengths', () => {
  it.each(height)('reads %j as %s', (text, reading) => {
    expect(say('trees.height', text)).toBe(reading);
  });

  it.each(gap)('reads %j, with picks by their look, as %s', (text, reading) => {
    expect(say('eaves.gap', text)).toBe(reading);
  });

  it('takes a bare number in the units of the walk', () => {
    expect(say('trees.height', '10', { units: 'metric' })).toBe('10; in m');
    expect(say('eaves.gap', '6', { units: 'metric' })).toBe('0.006; in mm');
  });
});

describe('lengths by side', () => {
  it.each(houses)('reads %j as %s', (text, reading) => {
    expect(say('about.next-house', text)).toBe(reading);
  });
});

describe('values in a row', () => {
  it('go to the sides that are asked about, in that order, when there are as many', () => {
    const two = { sides: ['front', 'back'] as const };
    expect(say('about.next-house', '20 100', two)).toBe('front 6.096, back 30.48; in ft');
    expect(say('about.next-house', 'twenty five', two)).toBe('front 7.62, back 7.62; in ft');
    expect(say('about.next-house', '2 ft 6', two)).toBe('front 0.762, back 0.762');
    const three = { sides: ['front', 'left', 'back'] as const };
    expect(say('about.next-house', '20 30 40', three)).toBe('front 6.096, left 9.144, back 12.192; in ft');
    expect(say('about.next-house', '2 ft 6 in 3 ft', three)).toBe('! notAMeasure');
  });
});

describe('years, at the older end', () => {
  it.each(year)('reads %j as %s', (text, reading) => {
    expect(say('about.year-built', text)).toBe(reading);
  });
});

describe('slopes', () => {
  it.each(slope)('reads %j as %s', (text, reading) => {
    expect(say('about.slope', text)).toBe(reading);
  });
});

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
  ['1 ft', '! outside'],
  ['400 ft', '! outside'],
  ['tall', '! notAMeasure'],
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

import { describe, expect, it } from 'vitest';
import { readFileValue } from '../../src/answers/read-file-value.ts';
import { contextOf, sayReading } from './reading/fixture.ts';

function say(id: string, value: unknown, more: Parameters<typeof contextOf>[1] = {}): string {
  const context = contextOf(id, more);
  if (context.question === undefined) throw new Error(`There is no question ${id}.`);
  const read = readFileValue(value, context.question, context);
  if ('problem' in read)
    return `! ${read.problem}${read.suggestion === undefined ? '' : ` ${read.suggestion}`}`;
  return sayReading({
    kind: 'answer',
    answer: read.answer,
    ...(read.note === undefined ? {} : { note: read.note }),
  });
}

type Row = readonly [id: string, value: unknown, read: string];

const taken: readonly Row[] = [
  ['roof.covering', 'wood', 'wood'],
  ['roof.covering', 'Wood shakes or wood shingles', 'wood'],
  ['roof.covering', 'not sure', '?'],
  ['roof.covering', "don't know", '?'],
  ['roof.covering', 'skip', 'skip'],
  ['roof.above', ['chimney', 'panels'], 'chimney+panels'],
  ['roof.above', ['panels', 'chimney', 'panels'], 'chimney+panels'],
  ['roof.above', 'panels', 'panels'],
  ['roof.above', ['none'], 'none'],
  ['about.lines', 'yes', 'yes'],
  ['about.lines', true, 'yes'],
  ['about.lines', 'No', 'no'],
  ['about.lines', false, 'no'],
  ['about.year-built', 1962, '1962'],
  ['about.year-built', '1960s', '1960; of 1960..1969'],
  ['about.slope', '20 %', '20'],
  ['about.slope', 'flat', '0'],
  ['eaves.gap', '1/4 in', '0.0064'],
  ['eaves.gap', '6 mm', '0.006'],
  ['eaves.gap', 1, '0.0254; in in'],
  ['eaves.gap', 'a pencil', '0.0064'],
  ['trees.height', '120 cm', '1.2'],
  ['trees.count', 2, 't1+t2'],
  ['trees.count', '0', '()'],
  ['trees.count', ['t1', 't4'], 't1+t4'],
  ['trees.side', 'front', 'front'],
  ['trees.side', ['left', 'front'], 'front+left'],
  ['trees.side', 'all', 'front+left+back+right'],
  ['about.insurer', ' Class A  roof ', 'Class A roof'],
  ['about.insurer', 'x'.repeat(600), `${'x'.repeat(500)}; cut to 500`],
  ['siding.kind', 'wood', 'front wood, left wood, back wood, right wood'],
  ['siding.kind', { front: 'wood', rest: 'stone' }, 'front wood, left stone, back stone, right stone'],
  ['siding.kind', { rest: 'stone', front: 'wood' }, 'front wood, left stone, back stone, right stone'],
  ['siding.kind', { all: 'stone' }, 'front stone, left stone, back stone, right stone'],
  ['siding.kind', { front: 'wood', back: 'not sure', left: 'skip' }, 'front wood, left skip, back ?'],
  ['siding.kind', 'not sure', 'front ?, left ?, back ?, right ?'],
  [
    'zone0.ground',
    { front: ['bark', 'grass'], rest: 'gravel' },
    'front bark+grass, left gravel, back gravel, right gravel',
  ],
  ['roof.gutter-litter', { front: true, rest: false }, 'front yes, left no, back no, right no'],
  ['roof.gutter-litter', ['front', 'left'], 'front yes, left yes, back no, right no'],
  ['roof.gutter-litter', 'back', 'front no, left no, back yes, right no'],
  ['roof.gutter-litter', 'all', 'front yes, left yes, back yes, right yes'],
  ['roof.gutter-litter', 'no', 'front no, left no, back no, right no'],
  [
    'about.next-house',
    { left: '10 ft', rest: 'none in sight' },
    'front 91.44, left 3.048, back 91.44, right 91.44',
  ],
];

const refused: readonly Row[] = [
  ['roof.covering', 'wod', '! "roof.covering" has no option "wod". Did you mean "wood"?'],
  ['roof.covering', 'cedar', '! "roof.covering" has no option "cedar". It has: shingle, wood, tile, metal.'],
  ['roof.covering', 2, '! "roof.covering" has no option "2". It has: shingle, wood, tile, metal.'],
  ['roof.covering', null, '! "roof.covering" has no value.'],
  ['roof.covering', ['wood'], '! "roof.covering" takes one option.'],
  ['roof.covering', { front: 'wood' }, '! "roof.covering" is not asked by side.'],
  ['roof.above', ['chimney', 'pannels'], '! "roof.above" has no option "pannels". Did you mean "panels"?'],
  ['roof.above', ['none', 'panels'], '! "none" stands alone: it does not go with other options.'],
  ['roof.above', [], '! "roof.above" is an empty list.'],
  ['about.lines', 'perhaps so', '! "about.lines" takes yes or no.'],
  ['about.lines', 'yess', '! "about.lines" takes yes or no. Did you mean "yes"?'],
  [
    'about.year-built',
    1492,
    '! "1492" is no number that "about.year-built" can take: it must be between 1600 and 2100.',
  ],
  [
    'eaves.gap',
    '3 ft',
    '! "3 ft" is no length that "eaves.gap" can take: it must be between 0 in and 24 in.',
  ],
  ['eaves.gap', 'wide', '! "wide" is no length that "eaves.gap" can take: there is no number in it.'],
  ['eaves.gap', true, '! "eaves.gap" takes a length.'],
  ['trees.count', 7, '! there is room for 6 trees.'],
  ['trees.count', 1.5, '! "trees.count" takes a whole number.'],
  ['trees.count', ['x1'], '! "x1" is no key of trees, such as "t1".'],
  ['trees.side', 'frnt', '! "frnt" is no side. Did you mean "front"?'],
  ['siding.kind', { frnt: 'wood' }, '! "frnt" is no side. Did you mean "front"?'],
  ['siding.kind', { front: 'vinil' }, '! front: "siding.kind" has no option "vinil". Did you mean "vinyl"?'],
  ['siding.kind', { rest: 'wood', all: 'stone' }, '! "rest" and "all" are the same: use one of them.'],
  ['about.insurer', '', '! "about.insurer" takes a text.'],
];

describe('a value of an answer file', () => {
  it.each(taken)('%s: %j is read as %s', (id, value, read) => {
    expect(say(id, value)).toBe(read);
  });

  it.each(refused)('%s: %j is refused', (id, value, read) => {
    expect(say(id, value)).toBe(read);
  });

  it('takes a bare number in the units of the place, and says so', () => {
    const context = contextOf('trees.height', { units: 'metric' });
    if (context.question === undefined) throw new Error('The question is there.');
    expect(readFileValue(12, context.question, context)).toMatchObject({
      answer: { status: 'given', value: 12 },
      assumedUnit: 'm',
    });
  });

  it('fills only the sides asked about', () => {
    const sides = ['front', 'back'] as const;
    expect(say('siding.kind', 'wood', { sides })).toBe('front wood, back wood');
    expect(say('siding.kind', { front: 'wood', rest: 'stone' }, { sides })).toBe('front wood, back stone');
  });
});

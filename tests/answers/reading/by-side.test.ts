import { describe, expect, it } from 'vitest';
import { say } from './fixture.ts';

type Row = readonly [text: string, reading: string];

const ALL = 'front yes, left yes, back yes, right yes';
const NONE = 'front no, left no, back no, right no';
const FRONT_LEFT = 'front yes, left yes, back no, right no';
const BUT_BACK = 'front yes, left yes, back no, right yes';

const onWhichSides: readonly Row[] = [
  ['front and left', FRONT_LEFT],
  ['front, left', FRONT_LEFT],
  ['front left', FRONT_LEFT],
  ['front & left', FRONT_LEFT],
  ['front/left', FRONT_LEFT],
  ['FRONT AND LEFT', FRONT_LEFT],
  ['the front and the left side', FRONT_LEFT],
  ['on the front and on the left', FRONT_LEFT],
  ['yes, front and left', FRONT_LEFT],
  ['only front and left', FRONT_LEFT],
  ['1 and 2', FRONT_LEFT],
  ['1-2', FRONT_LEFT],
  ['f, l', FRONT_LEFT],
  ['front and left, not the back', FRONT_LEFT],
  ['front and left, none on the others', FRONT_LEFT],
  ['front has some, left too', FRONT_LEFT],
  ['frotn and left', `${FRONT_LEFT}; misspelt`],
  ['left', 'front no, left yes, back no, right no'],
  ['back', 'front no, left no, back yes, right no'],
  ['the back', 'front no, left no, back yes, right no'],
  ['rear', 'front no, left no, back yes, right no'],
  ['just round the back', 'front no, left no, back yes, right no'],
  ['3', 'front no, left no, back yes, right no'],
  ['b', 'front no, left no, back yes, right no'],
  ['street side', 'front yes, left no, back no, right no'],
  ['front only', 'front yes, left no, back no, right no'],
  ['both sides', 'front no, left yes, back no, right yes'],
  ['i think the front', 'front yes~guess, left no, back no, right no'],
  ['all', ALL],
  ['all of them', ALL],
  ['all four sides', ALL],
  ['all 4', ALL],
  ['every side', ALL],
  ['everywhere', ALL],
  ['all the way round', ALL],
  ['yes', ALL],
  ['yep', ALL],
  ['yes on all sides', ALL],
  ['1-4', ALL],
  ['none', NONE],
  ['no', NONE],
  ['nope', NONE],
  ['nowhere', NONE],
  ['neither', NONE],
  ['no, none', NONE],
  ['none that i can see', NONE],
  ['all except the back', BUT_BACK],
  ['all but the back', BUT_BACK],
  ['all but 3', BUT_BACK],
  ['everywhere but back', BUT_BACK],
  ['both sides but not the back', 'front no, left yes, back no, right yes'],
  ['front and back except the left', 'front yes, left no, back yes, right no'],
  ['everywhere except at the rear', BUT_BACK],
  ['yes except the back', BUT_BACK],
  ['just not the back', BUT_BACK],
  ['not at the back, yes on the others', BUT_BACK],
  ['back no, rest yes', BUT_BACK],
  ['back: no; everywhere else: yes', BUT_BACK],
  ['everything but the front and left', 'front no, left no, back yes, right yes'],
  ['none except the front', 'front yes, left no, back no, right no'],
  ['front yes, back no, rest not sure', 'front yes, left ?, back no, right ?'],
  ['front yes, back no, left no, right yes', 'front yes, left no, back no, right yes'],
  ['yes on the front, no on the back', 'front yes, back no; without left right'],
  ['front=yes, back=no', 'front yes, back no; without left right'],
  ['front no', 'front no; without left back right'],
  ['not the back', 'back no; without front left right'],
  ['not sure about the back', 'back ?; without front left right'],
  ["can't see the back", 'back ?; without front left right'],
  ['skip the back', 'back skip; without front left right'],
  ['all sides but not sure about the back', 'front yes, left yes, back ?, right yes'],
  ['front and the garage', '! noMatch'],
  ['the front is clean', '! noMatch'],
  ['the road is above us', '! noMatch'],
  ['over the back door', 'front no, left no, back yes, right no'],
  ['leaves at the front', 'front yes, left no, back no, right no'],
  ['front, nowhere else', 'front yes, left no, back no, right no'],
  ['front yes, nowhere else', 'front yes, left no, back no, right no'],
  ['leaves at the front and nothing else', 'front yes, left no, back no, right no'],
  ['nowhere else', 'front no, left no, back no, right no'],
  ['left or right', '! mixedSides'],
  ['not left or right', 'left no, right no; without front back'],
  ['two sides', '! noMatch'],
  ['2 back 1 left', 'front no, left yes, back yes, right no'],
  ['3 on each side', 'front yes, left yes, back yes, right yes'],
  ['two sides, front and left', 'front yes, left yes, back no, right no'],
  ['just the back one', 'front no, left no, back yes, right no'],
  ['front yes but only if it rains', '! noMatch'],
  ['frnt, lft', '! noMatch'],
  ['not sure', 'front ?, left ?, back ?, right ?'],
  ['skip', 'front skip, left skip, back skip, right skip'],
  ['9', '! noSuchNumber'],
  ['purple', '! noMatch'],
];

const STUCCO = 'front stone, left stone, back stone, right stone';

const walls: readonly Row[] = [
  ['stucco', STUCCO],
  ['all stucco', STUCCO],
  ['stucco everywhere', STUCCO],
  ['stucco all round', STUCCO],
  ['stucco on all sides', STUCCO],
  ['they are all stucco', STUCCO],
  ['its stucco, same everywhere', STUCCO],
  ['all the same, stucco', STUCCO],
  ['yes, stucco', STUCCO],
  ['1', STUCCO],
  ['a', STUCCO],
  ['1 everywhere', STUCCO],
  ['wood front and back, stucco left', 'front wood, left stone, back wood; without right'],
  ['front: wood; rest stucco', 'front wood, left stone, back stone, right stone'],
  ['front wood, rest stucco', 'front wood, left stone, back stone, right stone'],
  ['wood at the front, stucco elsewhere', 'front wood, left stone, back stone, right stone'],
  ['stucco, wood on the front', 'front wood, left stone, back stone, right stone'],
  ['stucco except the front is wood', 'front wood, left stone, back stone, right stone'],
  ['stucco except wood at the front', 'front wood, left stone, back stone, right stone'],
  ['all stucco but the front, which is wood', 'front wood, left stone, back stone, right stone'],
  ['2 front, 1 rest', 'front wood, left stone, back stone, right stone'],
  ['b front, a rest', 'front wood, left stone, back stone, right stone'],
  ['front 2, others 1', 'front wood, left stone, back stone, right stone'],
  ['front - wood, others - stucco', 'front wood, left stone, back stone, right stone'],
  ['front is wood and the rest is stucco', 'front wood, left stone, back stone, right stone'],
  ['the front has wood. the other three are stucco', 'front wood, left stone, back stone, right stone'],
  ['front wood\nrest stucco', 'front wood, left stone, back stone, right stone'],
  ['wood, stucco, stucco, stucco', 'front wood, left stone, back stone, right stone'],
  ['2 1 1 1', 'front wood, left stone, back stone, right stone'],
  ['2,1,1,1', 'front wood, left stone, back stone, right stone'],
  ['front, back: wood; left, right: vinyl', 'front wood, left vinyl, back wood, right vinyl'],
  ['front and back are wood and left and right are vinyl', 'front wood, left vinyl, back wood, right vinyl'],
  ['wood front and back, vinyl on the sides', 'front wood, left vinyl, back wood, right vinyl'],
  ['wood in front, vinyl in back', 'front wood, back vinyl; without left right'],
  ['wood on the street side, vinyl at the rear', 'front wood, back vinyl; without left right'],
  ['front wood, same on the back, vinyl left', 'front wood, left vinyl, back wood; without right'],
  ['stucco except the back', 'front stone, left stone, right stone; without back'],
  ["don't know about the back", 'back ?; without front left right'],
  ['stucco, not sure about the back', 'front stone, left stone, back ?, right stone'],
  ['wood at the front and the others not sure', 'front wood, left ?, back ?, right ?'],
  ['i think stucco all round', 'front stone~guess, left stone~guess, back stone~guess, right stone~guess'],
  ['stuco', `${STUCCO}; misspelt`],
  ['wood frotn, vynil back', 'front wood, back vinyl; misspelt; without left right'],
  ['not sure', 'front ?, left ?, back ?, right ?'],
  ['front', '! valueMissing'],
  ['same everywhere', '! valueMissing'],
  ['front wood, front vinyl', '! sideTwice'],
  ['front brick, sides vinyl', 'front stone, left vinyl, right vinyl; without back'],
  ['stucco front and back, wood sides', 'front stone, left wood, back stone, right wood'],
  ['front brick, back and sides vinyl', 'front stone, left vinyl, back vinyl, right vinyl'],
  ['wood wood stucco stucco', 'front wood, left wood, back stone, right stone'],
  ['wood wood stucco not sure', 'front wood, left wood, back stone, right ?'],
  ['the back one is wood', 'back wood; without front left right'],
  ['wood and vinyl', '! oneOnly wood vinyl'],
  ['front purple', '! noMatch'],
];

const ground: readonly Row[] = [
  ['gravel', 'front gravel, left gravel, back gravel, right gravel'],
  ['bark and grass', 'front bark+grass, left bark+grass, back bark+grass, right bark+grass'],
  [
    'bark and grass at the front, gravel elsewhere',
    'front bark+grass, left gravel, back gravel, right gravel',
  ],
  ['bark, grass front; gravel rest', 'front bark+grass, left gravel, back gravel, right gravel'],
  ['front: bark, grass; rest: gravel', 'front bark+grass, left gravel, back gravel, right gravel'],
  ['front: 3 and 4; rest: 2', 'front bark+grass, left gravel, back gravel, right gravel'],
  ['front 3 4, rest 2', 'front bark+grass, left gravel, back gravel, right gravel'],
  ['front c and d; back b', 'front bark+grass, back gravel; without left right'],
  ['1,3', 'front hard+bark, left hard+bark, back hard+bark, right hard+bark'],
  ['nothing at the back, gravel everywhere else', 'front gravel, left gravel, back none, right gravel'],
  ['none', 'front none, left none, back none, right none'],
  ['gravel all round except bark at the back', 'front gravel, left gravel, back bark, right gravel'],
  ['front bark and chips, left patio', 'front bark, left hard; without back right'],
  ['gravel, nothing else', 'front gravel, left gravel, back gravel, right gravel'],
  ['gravel at the front, nothing else', 'front gravel; without left back right'],
  ['patio out back, lawn out front', 'front grass, back hard; without left right'],
];

describe('on which sides', () => {
  it.each(onWhichSides)('reads %j as %s', (text, reading) => {
    expect(say('roof.gutter-litter', text)).toBe(reading);
  });

  it('asks only about the sides that are there, and says which of those named are not', () => {
    const sides = ['front', 'back'] as const;
    expect(say('roof.gutter-litter', 'all', { sides })).toBe('front yes, back yes');
    expect(say('roof.gutter-litter', 'both', { sides })).toBe('front yes, back yes');
    expect(say('roof.gutter-litter', '2', { sides })).toBe('front no, back yes');
    expect(say('roof.gutter-litter', 'front and left', { sides })).toBe('front yes, back no; not asked left');
    expect(say('roof.gutter-litter', 'left', { sides })).toBe('front no, back no; not asked left');
    expect(say('siding.kind', 'left wood', { sides })).toBe('! sideNotAsked');
  });
});

describe('a choice for each side', () => {
  it.each(walls)('reads %j as %s', (text, reading) => {
    expect(say('siding.kind', text)).toBe(reading);
  });

  it('takes "the same" from what was given before', () => {
    const before = { status: 'bySide', sides: { front: { status: 'given', value: 'wood' } } } as const;
    const sides = ['left', 'right'] as const;
    expect(say('siding.kind', 'same everywhere', { before, sides })).toBe('left wood, right wood');
    expect(say('siding.kind', 'the same', { before, sides })).toBe('left wood, right wood');
    expect(say('siding.kind', 'left the same, right vinyl', { before, sides })).toBe(
      'left wood, right vinyl',
    );
  });
});

describe('sides that have their answer already', () => {
  const stucco = { status: 'given', value: 'stone' } as const;
  const before = { status: 'bySide', sides: { back: stucco, right: stucco } } as const;
  const more = { before, sides: ['front', 'left'] as const };

  it.each([
    ['back is wood', 'back wood; without front left'],
    ['front vinyl, back wood', 'front vinyl, back wood; without left'],
    ['wood, back vinyl', 'front wood, left wood, back vinyl'],
    ['all wood', 'front wood, left wood'],
    ['wood and the rest vinyl', '! mixedSides'],
    ['back', '> back'],
    ['go back', '> back'],
  ])('are changed when they are named: %j is %s', (text, reading) => {
    expect(say('siding.kind', text, more)).toBe(reading);
  });

  it('are changed where naming a side is a yes', () => {
    const clean = { status: 'bySide', sides: { back: { status: 'given', value: 'no' } } } as const;
    const partly = { before: clean, sides: ['front', 'left'] as const };
    expect(say('roof.gutter-litter', 'back', partly)).toBe('front no, left no, back yes');
    expect(say('roof.gutter-litter', 'go back', partly)).toBe('> back');
  });
});

describe('several for each side', () => {
  it.each(ground)('reads %j as %s', (text, reading) => {
    expect(say('zone0.ground', text)).toBe(reading);
  });
});

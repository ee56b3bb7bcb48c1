import { describe, expect, it } from 'vitest';
import { countedMembers } from '../../../src/answers/reading/read-count.ts';
import { readMessage } from '../../../src/answers/reading/read-message.ts';
import { contextOf, say } from './fixture.ts';

type Row = readonly [text: string, reading: string];

const count: readonly Row[] = [
  ['2', 't1+t2'],
  ['two', 't1+t2'],
  ['two trees', 't1+t2'],
  ['there are 2', 't1+t2'],
  ['just one', 't1'],
  ['a couple', 't1+t2'],
  ['2 or 3', 't1+t2+t3'],
  ['six', 't1+t2+t3+t4+t5+t6'],
  ['none', '()'],
  ['no', '()'],
  ['no trees', '()'],
  ['zero', '()'],
  ['0', '()'],
  ['7', '! tooMany'],
  ['a dozen', '! tooMany'],
  ['2.5', '! notWhole'],
  ['lots', '! noMatch'],
  ['2 big pines and an oak', 't1+t2+t3'],
  ['a pine and an oak', 't1+t2'],
  ['two pines, an oak and 3 junipers', 't1+t2+t3+t4+t5+t6'],
  ['2 pines 1 oak', 't1+t2+t3'],
  ['one pine, one oak', 't1+t2'],
  ['a big one and two small ones', 't1+t2+t3'],
  ['an apple tree', 't1'],
  ['a couple of pines and an oak', 't1+t2+t3'],
  ['no pines, 2 oaks', 't1+t2'],
  ['two in front and one in back', 't1+t2+t3'],
  ['one, a big pine', 't1'],
  ['3 trees, two pines and an oak', 't1+t2+t3'],
  ['3 trees, 2 of them dead', '! noMatch'],
  ['2 trees and a shed', '! noMatch'],
  ['a pine and a trampoline', '! noMatch'],
  ['a row of pines', '! noMatch'],
  ['no big trees', '! noMatch'],
  ['2, maybe 3', 't1+t2+t3~guess'],
  ['at least 3', 't1+t2+t3'],
  ['more than 3', 't1+t2+t3+t4'],
  ['fewer than 3', 't1+t2'],
  ["i don't think so", '()~guess'],
  ['to', 't1+t2; misspelt'],
  ['the', '! noMatch'],
  ['not sure', '?'],
  ['skip', 'skip'],
];

const treeSide: readonly Row[] = [
  ['front', 'front'],
  ['back', 'back'],
  ['the rear', 'back'],
  ['front and left', 'front+left'],
  ['front left corner', 'front+left'],
  ['all except the back', 'front+left+right'],
  ['everywhere', 'front+left+back+right'],
  ['2', 'left'],
  ['1 and 2', 'front+left'],
  ['l', 'left'],
  ['none', '()'],
  ['not sure', '?'],
  ['go back', '> back'],
  ['purple', '! noMatch'],
];

describe('a count', () => {
  it.each(count)('reads %j as %s', (text, reading) => {
    expect(say('trees.count', text)).toBe(reading);
  });

  it('keeps the first members, and never uses a key twice', () => {
    const members = ['t1', 't4'];
    const usedMembers = ['t1', 't2', 't4', 't5'];
    expect(say('trees.count', '1', { members, usedMembers })).toBe('t1');
    expect(say('trees.count', '2', { members, usedMembers })).toBe('t1+t4');
    expect(say('trees.count', '4', { members, usedMembers })).toBe('t1+t4+t6+t7');
    const group = contextOf(undefined).groups.find((one) => one.id === 'trees');
    expect(group && countedMembers(3, group, ['t2'])).toEqual(['t2', 't3', 't4']);
  });
});

describe('the sides on which a thing stands', () => {
  it.each(treeSide)('reads %j as %s', (text, reading) => {
    expect(say('trees.side', text)).toBe(reading);
  });
});

describe('free text', () => {
  it.each([
    ['  Class A roof;  no wood fence ', 'Class A roof; no wood fence'],
    ['remove the trees within 30 ft', 'remove the trees within 30 ft'],
    ['change the roof', 'change the roof'],
    ['back yard must be cleared', 'back yard must be cleared'],
    ['brush cleared because of fire danger', 'brush cleared because of fire danger'],
    ['metal roof, no fires near fences, sprinklers', 'metal roof, no fires near fences, sprinklers'],
    ['a\u001b[31mred\u001b[0m text', 'a red text'],
    ['help', '> help'],
    ['go back', '> back'],
    ['go to the roof', '> go roof'],
    ['not sure', '?'],
    ['skip', 'skip'],
    ['fire outside', 'emergency?'],
  ])('reads %j as %s', (text, reading) => {
    expect(say('about.insurer', text)).toBe(reading);
  });

  it('keeps at most 500 characters, and says so', () => {
    const reading = readMessage('x '.repeat(400), contextOf('about.insurer'));
    expect(reading).toMatchObject({ kind: 'answer', note: { cutTo: 500 } });
    if (reading.kind !== 'answer' || reading.answer.status !== 'given') throw new Error('It is an answer.');
    expect(String(reading.answer.value).length).toBeLessThanOrEqual(500);
  });
});

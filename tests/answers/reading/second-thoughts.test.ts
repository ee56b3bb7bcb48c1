import { describe, expect, it } from 'vitest';
import { say } from './fixture.ts';

type Row = readonly [question: string, text: string, reading: string];

const taken: readonly Row[] = [
  ['about.lines', 'yes, no wait, no', 'no'],
  ['about.lines', 'yes wait no', 'no'],
  ['about.lines', 'yes i mean no', 'no'],
  ['about.lines', 'no sorry yes', 'yes'],
  ['about.lines', 'yes, actually no', 'no'],
  ['about.lines', 'no wait, yes', 'yes'],
  ['about.lines', 'yes, hold on, not sure', '?'],
  ['about.danger', 'no wait, yes', 'yes'],
  ['roof.covering', 'wood, no wait, metal', 'metal'],
  ['roof.covering', 'wood no wait metal', 'metal'],
  ['roof.covering', 'wood, i mean metal', 'metal'],
  ['roof.covering', 'wood, sorry, metal', 'metal'],
  ['roof.covering', 'wood, make that metl', 'metal; misspelt'],
  ['roof.above', 'chimney, no wait, panels', 'panels'],
  ['roof.above', '1 and 3, no wait, 1 and 2', 'chimney+skylight'],
  ['roof.above', 'chimney, actually no, just panels', 'panels'],
  ['trees.count', 'two, no three', 't1+t2+t3'],
  ['trees.count', 'two, i mean three', 't1+t2+t3'],
  ['trees.height', '20 no 25 feet', '7.62'],
  ['trees.height', '20, no, 25', '7.62; in ft'],
  ['trees.height', '20 feet, i mean 25', '7.62; in ft'],
  ['trees.height', '20 sorry 25 feet', '7.62'],
  ['about.year-built', '1975, no 1976', '1976'],
  ['siding.kind', 'wood, i mean vinyl', 'front vinyl, left vinyl, back vinyl, right vinyl'],
  ['siding.kind', 'front wood, no wait, vinyl', 'front vinyl; without left back right'],
  ['roof.gutter-litter', 'left, no wait, right', 'front no, left no, back no, right yes'],
  ['about.next-house', '20 on the left, no wait, 30', 'left 9.144; in ft; without front back right'],
  ['about.next-house', 'left 20 i mean right 20', 'right 6.096; in ft; without front left back'],
];

const untouched: readonly Row[] = [
  ['about.lines', 'no, sorry', 'no'],
  ['about.lines', 'sorry, no', 'no'],
  ['about.lines', 'actually yes', 'yes'],
  ['about.lines', 'yes, i mean there are two', 'yes'],
  ['roof.covering', 'sorry, metal', 'metal'],
  ['roof.covering', "it's actually metal", 'metal'],
  ['roof.covering', 'metal i mean', 'metal'],
  ['roof.covering', 'um i mean wood', 'wood'],
  ['roof.covering', 'wood no metal', 'wood'],
  ['roof.above', 'chimney and actually a skylight too', 'chimney+skylight'],
  ['roof.covering', 'wait', '> pause'],
  ['roof.covering', 'hold on', '> pause'],
  ['siding.kind', 'front wood, actually the back is wood too', 'front wood, back wood; without left right'],
];

const unclear: readonly Row[] = [
  ['roof.covering', 'wood, i mean whatever', '! noMatch'],
  ['roof.above', 'chimney and panels, no wait, skylight', '! ambiguous'],
  ['about.lines', 'yes i mean sort of', '! noMatch'],
  ['about.next-house', 'front 20, left 10, no wait, 30', '! mixedSides'],
  ['roof.gutter-litter', 'front and left, no wait, right', '! mixedSides'],
  ['siding.kind', 'wood everywhere, no wait the garage side is stucco', '! mixedSides'],
  ['siding.kind', 'front wood, left vinyl, i mean left wood, back wood', '! mixedSides'],
];

describe('an answer that takes itself back', () => {
  it.each(taken)('at %s: %j is %s', (question, text, reading) => {
    expect(say(question, text)).toBe(reading);
  });

  it.each(untouched)('at %s: %j only sounds like it and is %s', (question, text, reading) => {
    expect(say(question, text)).toBe(reading);
  });

  it.each(unclear)('at %s: %j is asked again: %s', (question, text, reading) => {
    expect(say(question, text)).toBe(reading);
  });
});

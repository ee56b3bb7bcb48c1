import { describe, expect, it } from 'vitest';
import { readMessage } from '../../../src/answers/reading/read-message.ts';
import { contextOf, say, words } from './fixture.ts';

const sure = [
  'there is a fire coming',
  'theres a fire coming',
  "There's a fire coming!",
  'a fire is coming up the hill',
  'FIRE COMING',
  'the house is on fire',
  'my house is on fire',
  'the shed next door is on fire',
  'the firewood is on fire',
  'i can see smoke on the ridge',
  'I see smoke',
  'we see flames',
  'no, there is smoke coming from the hill',
  'no there is smoke everywhere',
  'no, smoke everywhere',
  "can't breathe",
  'we have been told to leave',
  "We've been told to leave",
  'wood shakes, but we have been told to leave',
  'they told us to leave',
  'evacuation order',
  'they just issued an evacuation order for us',
  'we are evacuating',
  'i dont know what to do there is a fire coming',
  'not much, but there is a fire coming',
  'call 911',
  'the house is on fier',
  'theres smoek in the house',
  'evacuaton order',
  'told to leav now',
  'embers are falling',
  'embers are landing on the roof',
];

const doubt = [
  'fire',
  'smoke',
  'flames',
  'evacuate',
  'evacute',
  'evacuation',
  'wildfre',
  'smok',
  'I smell smoke maybe',
  'the fire is not far away',
  'cant see through the smoke',
  'help fire',
  'fire outside',
  'should we evacuate',
];

const neither = [
  'no smoke',
  'no fire',
  'no visible smoke',
  'no sign of fire',
  'there is no fire, smoke or embers',
  'I see no smoke and no flames',
  "i don't see any smoke",
  'nothing is burning',
  'it is not burning',
  'nobody has told us to leave',
  'we have not been told to leave',
  'fire pit',
  'the fire pit is at the back',
  'firewood',
  'fire-rated door',
  'fire rated shingles',
  'it has a fire-resistant coating',
  'the fire department came last year',
  'smoke detector',
  'fire extinguisher',
  'fir tree',
  'we spoke to the roofer',
  'window frames',
  'leaves now on the roof',
  'a member of the council',
  'fine, five feet',
  'the roof leaves a gap',
];

describe('an emergency', () => {
  it.each(sure)('is sure in %j, whatever is asked', (text) => {
    for (const id of [
      undefined,
      'roof.covering',
      'about.lines',
      'roof.gutter-litter',
      'about.insurer',
      'trees.height',
    ])
      expect(say(id, text)).toBe('EMERGENCY');
  });

  it.each(doubt)('may be meant by %j', (text) => {
    for (const id of [undefined, 'roof.covering', 'about.lines', 'roof.gutter-litter', 'trees.height'])
      expect(say(id, text)).toMatch(/^emergency\?$/);
  });

  it.each(neither)('is not in %j', (text) => {
    for (const id of [undefined, 'roof.covering', 'about.lines', 'roof.gutter-litter', 'trees.height'])
      expect(say(id, text)).not.toMatch(/emergency/i);
  });

  it('is not in any phrase that is never one', () => {
    for (const phrase of words.emergency.never) {
      expect([phrase, say(undefined, phrase)]).not.toEqual([phrase, expect.stringMatching(/emergency/i)]);
      const sentence = `the ${phrase} is by the wall`;
      expect([phrase, say('roof.covering', sentence)]).not.toEqual([phrase, 'EMERGENCY']);
    }
  });

  it('is in every phrase that is one', () => {
    for (const phrase of words.emergency.sure)
      expect([phrase, say('roof.covering', phrase)]).toEqual([phrase, 'EMERGENCY']);
    for (const phrase of words.emergency.doubt)
      expect([phrase, say('roof.covering', phrase)]).toEqual([phrase, expect.stringMatching(/emergency/i)]);
  });

  it('says which words it was known by', () => {
    expect(readMessage('oh no the house is on fire', contextOf(undefined))).toEqual({
      kind: 'emergency',
      sure: true,
      matched: 'house is on fire',
    });
  });
});

describe('words of danger that answer the question', () => {
  it.each([
    ['burns', 'burns'],
    ['it burns', 'burns'],
    ['Wood or something else that burns', 'burns'],
    ['does not burn', 'sound'],
    ['the house burns', 'burns'],
    ['is on fire', 'EMERGENCY'],
    ['smoke', 'emergency?'],
  ])('reads %j as %s', (text, reading) => {
    expect(say('siding.burns', text)).toBe(reading);
  });

  it.each([
    ['yes', 'yes'],
    ['no', 'no'],
    ['no smoke', 'no'],
    ['no smoke, no flames, nothing', 'no'],
    ['there is smoke', 'EMERGENCY'],
    ['yes, smoke', 'emergency?'],
    ['not sure', '?'],
  ])('reads %j about danger as %s', (text, reading) => {
    expect(say('about.danger', text)).toBe(reading);
  });
});

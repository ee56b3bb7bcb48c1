import { describe, expect, it } from 'vitest';
import { readMessage } from '../../../src/answers/reading/read-message.ts';
import { contextOf, say, words } from './fixture.ts';

type Row = readonly [text: string, reading: string];

const atAnyQuestion: readonly Row[] = [
  ['back', '> back'],
  ['go back', '> back'],
  ['go back please', '> back'],
  ['can we go back', '> back'],
  ['Back!', '> back'],
  ['help', '> help'],
  ['HELP', '> help'],
  ['i need help', '> help'],
  ['why', '> why'],
  ['why?', '> why'],
  ['why do you ask', '> why'],
  ['pause', '> pause'],
  ['can you pause please', '> pause'],
  ['where am i', '> where'],
  ['where are we?', '> where'],
  ['start over', '> startOver'],
  ['finish', '> finish'],
  ['done', '> finish'],
  ["that's all", '> finish'],
  ['stop', '> stop'],
  ['quit', '> stop'],
  ['pasue', '> pause'],
  ['finsh', '> finish'],
  ['go to the trees', '> go trees'],
  ['go to trees', '> go trees'],
  ['jump to fences', '> go fences'],
  ['skip to the vents', '> go vents'],
  ['take me to zone 0', '> go zone0'],
  ['can we go to the fences please', '> go fences'],
  ['go back to the roof', '> go roof'],
  ["let's do the trees", '> go trees'],
  ['go to fencs', '> go fences'],
  ['go to the moon', '! unknownStop'],
  ['change', '> change'],
  ['change my answer', '> change'],
  ['change roof covering', '> change roof.covering'],
  ['change the roof covering', '> change roof.covering'],
  ['change my answer about the roof covering', '> change roof.covering'],
  ['I want to change my answer about gutter litter please', '> change roof.gutter-litter'],
  ['change vents', '> change vents'],
  ['change my answer about vents', '> change vents'],
  ['change tree height', '> change trees.height'],
  ['change overhead lines', '> change about.lines'],
  ['change the moon', '! unknownQuestion'],
  ['remove tree 2', '> remove t2'],
  ['remove t2', '> remove t2'],
  ['delete the second tree', '> remove t2'],
  ['remove the tree', '> remove trees'],
  ['what is a soffit?', '> help'],
  ['does metal count?', '> help'],
  ['how do i measure that', '> help'],
];

describe('commands', () => {
  it.each(atAnyQuestion)('reads %j at a choice as %s', (text, reading) => {
    expect(say('roof.covering', text)).toBe(reading);
  });

  it.each(['about.lines', 'trees.height', 'about.year-built', 'roof.above', 'siding.kind'])(
    'knows every whole command at %s',
    (id) => {
      const { jump: _, change: __, remove: ___, ...whole } = words.commands;
      const wrong = Object.entries(whole).flatMap(([command, phrases]) =>
        phrases
          .filter((phrase) => say(id, phrase) !== `> ${command}`)
          .map((phrase) => `${command}: ${phrase}`),
      );
      expect(wrong).toEqual([]);
    },
  );

  it('removes "it" only where members are talked about', () => {
    expect(say('trees.height', 'remove')).toBe('> remove');
    expect(say('trees.height', 'delete this')).toBe('> remove');
    expect(say('roof.covering', 'delete this')).toBe('! noMatch');
  });

  it.each([
    ['back', 'front no, left no, back yes, right no'],
    ['go back', '> back'],
    ['previous', '> back'],
  ])('reads %j on which sides as %s', (text, reading) => {
    expect(say('roof.gutter-litter', text)).toBe(reading);
  });

  it.each([
    ['trees', '> go trees'],
    ['the roof', '> go roof'],
    ['change roof covering', '> change roof.covering'],
    ['back', '> back'],
    ['finish', '> finish'],
    ['hello', '! noQuestion'],
    ['2', '! noQuestion'],
  ])('reads %j with no question as %s', (text, reading) => {
    expect(say(undefined, text)).toBe(reading);
  });

  it('names what it did not find', () => {
    expect(readMessage('go to the moon', contextOf('roof.covering'))).toMatchObject({
      problem: { code: 'unknownStop', said: 'moon' },
    });
  });
});

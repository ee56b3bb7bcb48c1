import { describe, expect, it } from 'vitest';
import { newWalk } from '../../src/conversation/new-walk.ts';
import { readYesNo } from '../../src/conversation/read-yes-no.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { takeTurn } from '../../src/conversation/turn.ts';
import { realProgramme } from '../support/programme.ts';
import { day } from '../support/walks.ts';

const programme = realProgramme();
const fresh = newWalk(programme, 'w' as WalkId, day);
const read = (text: string) => readYesNo(programme.checklist, fresh, text);

describe('a yes or no to a short question', () => {
  it.each([
    'yes',
    'Y',
    'yes please',
    'yeah sure',
    'ok',
    'of course',
    'we do',
    'it is',
    'yes, no problem',
    'sure, why not',
    'yes!',
  ])('is yes in "%s"', (text) => {
    expect(read(text)).toBe('yes');
  });

  it.each([
    'no',
    'N',
    'no thanks',
    'nope',
    'it is not',
    "it isn't",
    "we don't",
    'not really',
    'no we are not',
    'no, not yet',
  ])('is no in "%s"', (text) => {
    expect(read(text)).toBe('no');
  });

  it.each([
    '',
    'hmm',
    'they do not want that',
    'we do not',
    'of course not',
    'certainly not',
    'absolutely not',
    'yeah no',
    'correct, no',
    'ok but not my number',
    'yes if my wife agrees',
    'sure, unless it costs',
    'no wait, yes',
    'I do not think so, ok?',
  ])('is neither in "%s"', (text) => {
    expect(read(text)).not.toBe('yes');
    if (text !== 'I do not think so, ok?') expect(read(text)).toBeUndefined();
  });
});

describe('a question on which much hangs', () => {
  const lastOf = (...lines: string[]) => {
    let turn = takeTurn(programme, fresh, { kind: 'hello' }, day);
    for (const text of lines) turn = takeTurn(programme, turn.record, { kind: 'text', text }, day);
    return turn;
  };

  it.each(['we do not', 'it is not', 'of course not'])('keeps whoever says "%s" out of danger', (text) => {
    expect(lastOf('the house is on fire', text).record.cursor.phase).toBe('emergency');
  });

  it.each(['of course not', 'ok but keep the roof'])('erases nothing for "%s"', (text) => {
    expect(lastOf('no', 'forget me', text).erase).toBeUndefined();
    expect(lastOf('no', 'start over', text).record.sheet).not.toEqual({});
  });

  it.each(['smoke', 'I smell smoke'])(
    'asks about danger before anything else, also after a pause: "%s"',
    (text) => {
      for (const before of [
        ['no', 'pause'],
        ['no', 'forget me'],
        ['no', 'start over'],
      ])
        expect(lastOf(...before, text).record.cursor.pending?.kind).toBe('emergency');
    },
  );
});

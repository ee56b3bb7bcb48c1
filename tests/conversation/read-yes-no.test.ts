import { describe, expect, it } from 'vitest';
import { newWalk } from '../../src/conversation/new-walk.ts';
import { readClearly, readYesNo } from '../../src/conversation/read-yes-no.ts';
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

describe('a clear yes or no', () => {
  const clear = (text: string, about: 'request' | 'safe') =>
    readClearly(programme.checklist, fresh, text, about);

  it.each([
    'yes',
    'Yes please!',
    'sure, go ahead',
    'no problem',
    "no, I don't mind".slice(4),
    'she agrees',
    "that's fine, thanks",
  ])('is yes to a request: "%s"', (text) => {
    expect(clear(text, 'request')).toBe('yes');
  });

  it.each(['no', 'no thanks', 'of course not', 'they refuse', 'not now, sorry'])(
    'is no to a request: "%s"',
    (text) => {
      expect(clear(text, 'request')).toBe('no');
    },
  );

  it.each([
    'ok wait',
    'ok keep it',
    'okay stop',
    'sure? what happens then',
    'probably',
    'i think so',
    'no, go ahead',
    'no wait',
  ])('is neither to a request: "%s"', (text) => {
    expect(clear(text, 'request')).toBeUndefined();
  });

  it.each([
    'yes',
    "I'm safe",
    'we are safe',
    'yes we are safe, no smoke here',
    'yes, no flames',
    'false alarm',
  ])('says that somebody is safe: "%s"', (text) => {
    expect(clear(text, 'safe')).toBe('yes');
  });

  it.each(['ok we are leaving', 'okay going', 'sure, running', 'ok', 'sure', 'probably', 'we do not'])(
    'does not say that somebody is safe: "%s"',
    (text) => {
      expect(clear(text, 'safe')).not.toBe('yes');
    },
  );
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

  it.each(["no, it's ok", "no we're okay", "no, I'm sure", 'no, all ok here'])(
    'sends nobody away for "%s"',
    (text) => {
      expect(lastOf('no', 'smoke', text).record.cursor.phase).toBe('asking');
    },
  );

  it('is asked again of whoever comes back', () => {
    const { record } = lastOf('no', 'smoke');
    const back = takeTurn(programme, record, { kind: 'hello' }, day);
    expect(back.record.cursor.pending?.kind).toBe('emergency');
    expect(back.reply.parts).toMatchObject([{ text: 'emergency.is-it' }]);
    expect(lastOf('no', 'pause', 'smoke', 'no').record.cursor.phase).toBe('asking');
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

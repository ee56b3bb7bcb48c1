import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayWidth, graphemes } from '../../src/terminal/display-width.ts';
import { stripControl, stripToLine } from '../../src/terminal/strip-control.ts';
import { asciiSymbols, chooseSymbols, unicodeSymbols } from '../../src/terminal/symbols.ts';
import { layoutWidth, wrapText } from '../../src/terminal/wrap-text.ts';

describe('text that people typed', () => {
  it.each([
    ['a colour', 'red \u001b[31mroof\u001b[0m', 'red roof'],
    ['clearing the scrollback', '\u001b[2J\u001b[3J\u001b[Hgone', 'gone'],
    ['a window title', '\u001b]0;owned\u0007tile', 'tile'],
    ['a link ended by ST', '\u001b]8;;https://example.org\u001b\\tile\u001b]8;;\u001b\\', 'tile'],
    ['a device string', '\u001bPq#0;2\u001b\\tile', 'tile'],
    ['an eight-bit sequence', '\u009b31mtile', 'tile'],
    ['a string that never ends', 'tile\u001b]0;evil', 'tile'],
    ['a bell, backspaces and DEL', 'ti\u0007l\u0008e\u007f', 'tile'],
    ['a lone escape', 'tile\u001b', 'tile'],
    ['a reset', '\u001bctile', 'tile'],
    ['a turned direction', 'ti\u202ele\u2066', 'tile'],
    ['an emoji family', 'house 👩‍👩‍👧 and e\u0301', 'house 👩‍👩‍👧 and e\u0301'],
  ])('with %s is shown without it', (_, text, expected) => {
    expect(stripControl(text)).toBe(expected);
  });

  it('keeps line breaks unless one line is wanted', () => {
    expect(stripControl('a\r\nb\rc\u2028d\te')).toBe('a\nb\nc\nd e');
    expect(stripToLine('a\nb')).toBe('a b');
  });

  it('never holds a control character afterwards, whatever it was', () => {
    const parts = fc.constantFrom(
      '\u001b',
      '[',
      ']',
      '0;',
      '3J',
      '\u0007',
      '\\',
      '\u009b',
      '\u0090',
      'm',
      'a',
      '\n',
      '\u202e',
    );
    fc.assert(
      fc.property(fc.array(parts), (pieces) => {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be left
        expect(stripControl(pieces.join(''))).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/u);
      }),
    );
  });
});

describe('the width of text', () => {
  // Unicode Standard Annex 11 (East Asian Width) and UTS 51 (emoji presentation is wide).
  it.each([
    ['roof', 4],
    ['é', 1],
    ['e\u0301', 1],
    ['屋根', 4],
    ['🏠', 2],
    ['👩‍👩‍👧', 2],
    ['🇫🇮', 2],
    ['❤️', 2],
    ['½ ″ – …', 7],
    ['\u200b', 0],
  ])('%s takes %i columns', (text, columns) => {
    expect(displayWidth(text)).toBe(columns);
  });

  it('counts what people see as one character as one', () => {
    expect(graphemes('a👩‍👩‍👧e\u0301')).toEqual(['a', '👩‍👩‍👧', 'e\u0301']);
  });

  it.each([
    [undefined, 79],
    [0, 79],
    [200, 80],
    [80, 79],
    [40, 39],
    [5, 10],
  ])('a terminal of %s columns is laid out in %i', (columns, width) => {
    expect(layoutWidth(columns)).toBe(width);
  });
});

describe('wrapping', () => {
  it('breaks between words and hangs the rows after the first', () => {
    const rows = wrapText('Stand back, across the street', 14, { first: '! ', rest: '  ' });
    expect(rows).toEqual(['! Stand back,', '  across the', '  street']);
  });

  it('keeps every word in order and every row within the width', () => {
    const word = fc.string({
      unit: fc.constantFrom('a', 'e\u0301', '屋', '🏠', '-'),
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(fc.array(word), fc.integer({ min: 4, max: 80 }), (words, width) => {
        const rows = wrapText(words.join(' '), width);
        expect(rows.join('').replaceAll(' ', '')).toBe(words.join(''));
        for (const row of rows) expect(displayWidth(row)).toBeLessThanOrEqual(width);
      }),
    );
  });
});

describe('the symbols', () => {
  it('have a fallback in plain ASCII for each', () => {
    for (const symbol of Object.values(asciiSymbols)) expect(symbol).toMatch(/^[ -~]+$/u);
    expect(Object.keys(asciiSymbols)).toEqual(Object.keys(unicodeSymbols));
  });

  it('take as many columns in both sets, so that nothing moves', () => {
    for (const [name, symbol] of Object.entries(unicodeSymbols)) {
      expect(displayWidth(symbol), name).toBe(asciiSymbols[name as keyof typeof asciiSymbols].length);
    }
  });

  it.each([
    [{ LANG: 'en_US.UTF-8' }, 'linux', unicodeSymbols],
    [{ LANG: 'en_US.UTF-8', LC_ALL: 'C' }, 'linux', asciiSymbols],
    [{ LC_CTYPE: 'C.utf8' }, 'linux', unicodeSymbols],
    [{}, 'linux', asciiSymbols],
    [{ LANG: 'en_US.UTF-8', TERM: 'linux' }, 'linux', asciiSymbols],
    [{}, 'darwin', unicodeSymbols],
    [{}, 'win32', asciiSymbols],
    [{ WT_SESSION: '1' }, 'win32', unicodeSymbols],
  ])('with %j on %s', (env, platform, expected) => {
    expect(chooseSymbols(env, platform)).toBe(expected);
  });
});

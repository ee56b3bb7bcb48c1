import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText } from '../../../src/answers/reading/clean-text.ts';

describe('cleaning a typed text', () => {
  it.each([
    ['plain text', 'plain text'],
    ['  two   spaces ', 'two spaces'],
    ['tab\tand\nline', 'tab and line'],
    ['a\u001b[31mred\u001b[0mb', 'a red b'],
    ['\u001b]0;title\u0007after', 'after'],
    ['\u001b]8;;https://example.org\u001b\\link\u001b]8;;\u001b\\', 'link'],
    ['clear\u001b[2J\u001b[Hscreen', 'clear screen'],
    ['\u009b31mcolour', 'colour'],
    ['back\u0008space', 'back space'],
    ['nul\u0000byte', 'nul byte'],
    ['right\u202eleft', 'rightleft'],
    ['\u2066isolated\u2069', 'isolated'],
    ['zero\u200bwidth\ufeff', 'zerowidth'],
    ['soft\u00adhyphen', 'softhyphen'],
    ['don’t', "don't"],
    ['“quoted”', '"quoted"'],
    ['2′ 6″', '2\' 6"'],
    ['5–10 ft', '5-10 ft'],
    ['no\u00a0break', 'no break'],
    ['cafe\u0301', 'caf\u00e9'],
    ['lone \ud800 surrogate', 'lone surrogate'],
    ['\u{e0041}tag', 'tag'],
    ['日本', '日本'],
    ['', ''],
  ])('makes %j into %j', (raw, clean) => {
    expect(cleanText(raw)).toBe(clean);
  });

  it('keeps at most so many characters, never half of one', () => {
    expect(cleanText('x'.repeat(5000))).toHaveLength(1000);
    expect(cleanText('😀'.repeat(20), 5)).toBe('😀'.repeat(5));
  });

  it('leaves nothing that steers a screen, whatever comes in, and cleans a clean text no further', () => {
    const anything = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc
        .array(
          fc.constantFrom(
            '\u001b',
            '[',
            ']',
            '3',
            '1',
            'm',
            '\u0007',
            'a',
            ' ',
            '\u202e',
            '\n',
            '’',
            '\ud800',
          ),
        )
        .map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(anything, (raw) => {
        const clean = cleanText(raw);
        expect(clean).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/u);
        expect(clean.length).toBeLessThanOrEqual(2000);
        expect(cleanText(clean)).toBe(clean);
      }),
      { numRuns: 500 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { cellsOf, wrap } from '../../src/report/wrap.ts';

describe('wrapping', () => {
  it('fills lines up to the width and hangs the rest under the first word', () => {
    expect(wrap('one two three four', 11, '- ', '  ')).toEqual(['- one two', '  three', '  four']);
  });

  it('breaks a word only when it is longer than a whole line', () => {
    expect(wrap('abc defghijklmno', 8)).toEqual(['abc', 'defghijk', 'lmno']);
  });

  it('counts wide characters as two cells and combining ones as none', () => {
    // Unicode Standard Annex 11: East Asian Wide takes two cells; U+0301 combines with the letter before it.
    expect(cellsOf('火事')).toBe(4);
    expect(cellsOf('e\u0301')).toBe(1);
    expect(wrap('火事と喧嘩', 4)).toEqual(['火事', 'と喧', '嘩']);
  });

  it('makes one empty line of nothing', () => {
    expect(wrap('', 40, '- ')).toEqual(['- ']);
  });
});

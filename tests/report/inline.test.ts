import { describe, expect, it } from 'vitest';
import { plainWords } from '../../src/report/document.ts';
import { inline } from '../../src/report/inline.ts';

describe('a sentence of the flow', () => {
  it('keeps emphasis, code and links to https and mail', () => {
    expect(inline('**Stay** _down_, say `roofdown` or see [the code](https://example.org).')).toEqual([
      { kind: 'strong', spans: [{ kind: 'text', text: 'Stay' }] },
      { kind: 'text', text: ' ' },
      { kind: 'em', spans: [{ kind: 'text', text: 'down' }] },
      { kind: 'text', text: ', say ' },
      { kind: 'code', text: 'roofdown' },
      { kind: 'text', text: ' or see ' },
      { kind: 'link', href: 'https://example.org', spans: [{ kind: 'text', text: 'the code' }] },
      { kind: 'text', text: '.' },
    ]);
  });

  it.each([
    ['[x](javascript:alert(1))', 'x'],
    ['[x](data:text/html,1)', 'x'],
    ['[x](http://example.org)', 'x'],
    ['[x](JaVaScRiPt:alert(1))', 'x'],
    ['a<b>bold</b><script>s</script> c', 'abolds c'],
    ['![picture](https://example.org/x.png)', ''],
  ])('makes neither link nor markup of %s', (sentence, words) => {
    const spans = inline(sentence);
    expect(spans.every((span) => span.kind === 'text')).toBe(true);
    expect(plainWords(spans)).toBe(words);
  });

  it.each(['1/8 in & more', 'less than < 6 ft', '2 * 3 * 4', "don't", '20 % of 5 ft'])(
    'leaves "%s" as it is',
    (text) => {
      expect(plainWords(inline(text))).toBe(text);
    },
  );
});

import { mod11_10 } from 'cdigit';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { codeFrom, readCode, sayCode } from '../../../src/webhook/hand-over/code.ts';

const codes = fc.uint8Array({ minLength: 8, maxLength: 32 }).map(codeFrom);

describe('the check digit of a code', () => {
  // ISO/IEC 7064:2003, MOD 11,10: its worked example 0794 with check digit 5; from memory.
  it('is that of the standard', () => {
    expect(mod11_10.compute('0794')).toBe('5');
  });

  it('tells each slip of one digit', () => {
    fc.assert(
      fc.property(codes, fc.nat(11), fc.integer({ min: 1, max: 9 }), (code, at, by) => {
        const digits = [...code];
        digits[at] = String((Number(digits[at]) + by) % 10);
        expect(readCode(digits.join(''))).toEqual({ kind: 'slip' });
      }),
    );
  });
});

describe('a code', () => {
  it('has twelve digits and is read again however it is said', () => {
    fc.assert(
      fc.property(codes, (code) => {
        expect(code).toMatch(/^\d{12}$/);
        const said = sayCode(code);
        expect(said).toMatch(/^\d{4}-\d{4}-\d{4}$/);
        const alone = [
          code,
          said,
          ` ${said} `,
          said.replaceAll('-', ' '),
          said.replaceAll('-', ' – '),
          `Code: ${said}`,
          `my code is ${said}`,
          `send ${said}`,
          `"${said}"`,
          `it's ${said}!`,
        ];
        for (const text of alone)
          expect(readCode(text), text).toEqual({ kind: 'code', digits: code, alone: true });
        for (const text of [
          `${said} thanks`,
          `number ${said}`,
          `my number is ${said}.`,
          `Go on with your house walk: send ${said} to 555-0160`,
        ])
          expect(readCode(text), text).toEqual({ kind: 'code', digits: code, alone: false });
      }),
    );
  });

  it('with a digit left out or too much is a slip', () => {
    for (const text of [
      '4829 1530 671',
      '4829-1530-67123',
      'code 4829 1530 67',
      '48291530671',
      '4829153067123',
    ])
      expect(readCode(text)).toEqual({ kind: 'slip' });
  });

  it.each([
    '',
    'no',
    '12',
    '482915306',
    '10 ft',
    '+44 7700 900123',
    '555-0142',
    '541-555-0142',
    '5415550142',
    '(541) 555-0142',
    'number 1 541 555 0142',
    'number 447700900123',
    '100 120 80 150',
    'note call 447700900123 back',
    'front 12, left 8, back 10',
    'concrete',
  ])('is not "%s"', (text) => {
    expect(readCode(text)).toBeUndefined();
  });
});

import { mod11_10 } from 'cdigit';

/** Digits of a code, the last of them a check digit (ISO/IEC 7064, MOD 11,10), so that a slip of the tongue is noticed. */
export const codeDigits = 12;

const free = 10n ** BigInt(codeDigits - 1);

/** A code from at least eight bytes that nobody can guess. */
export function codeFrom(bytes: Uint8Array): string {
  const number = Buffer.from(bytes).readBigUInt64BE() % free;
  return mod11_10.generate(number.toString().padStart(codeDigits - 1, '0'));
}

/** A code as it is read out: 4829 1530 6712. */
export function sayCode(code: string): string {
  return code.replace(/\d{4}(?=\d)/gu, '$& ');
}

/** What of a text may be a code. */
export type ReadCode =
  /** `alone`: the text says nothing else. */
  | { readonly kind: 'code'; readonly digits: string; readonly alone: boolean }
  /** Meant as a code, with a digit wrong, missing or too much. */
  | { readonly kind: 'slip' };

/** Around a code that stands alone: "my code is ...", "number: ...". */
const aroundCode = /(?:(?:the|my|this|here is|here's|it is|it's|send) )*(?:code|number)?(?: is)?[:.,!\s]*/iu
  .source;
const alone = new RegExp(`^["'“”\\s]*${aroundCode}((?:\\d[\\s.–—-]*)+)["'“”.!\\s]*$`, 'iu');
const run = /\d(?:[\s.–—-]{0,3}\d){9,}/gu;

const digitsIn = (text: string) => text.replace(/\D/gu, '');

/**
 * The code in a text, however it is spaced: alone, or among other words where its check digit holds; nothing when there
 * is none. Ten to fourteen digits alone are meant as a code.
 */
export function readCode(text: string): ReadCode | undefined {
  const whole = alone.exec(text.trim())?.[1];
  if (whole !== undefined) {
    const digits = digitsIn(whole);
    if (digits.length < codeDigits - 2 || digits.length > codeDigits + 2) return undefined;
    const holds = digits.length === codeDigits && mod11_10.validate(digits);
    return holds ? { kind: 'code', digits, alone: true } : { kind: 'slip' };
  }
  const runs = [...text.matchAll(run)].map(([one]) => digitsIn(one));
  const [digits] = runs;
  const one = runs.length === 1 && digits?.length === codeDigits && mod11_10.validate(digits);
  return one && digits !== undefined ? { kind: 'code', digits, alone: false } : undefined;
}

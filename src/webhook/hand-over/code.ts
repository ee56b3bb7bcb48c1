import { mod11_10 } from 'cdigit';

/** Digits of a code, the last of them a check digit (ISO/IEC 7064, MOD 11,10), so that a slip of the tongue is noticed. */
export const codeDigits = 12;

const free = 10n ** BigInt(codeDigits - 1);

/** A code from at least eight bytes that nobody can guess. */
export function codeFrom(bytes: Uint8Array): string {
  const number = Buffer.from(bytes).readBigUInt64BE() % free;
  return mod11_10.generate(number.toString().padStart(codeDigits - 1, '0'));
}

/** A code as it is read out: 4829-1530-6712, which no message breaks in two. */
export function sayCode(code: string): string {
  return code.replace(/\d{4}(?=\d)/gu, '$&-');
}

/** What of a text may be a code. */
export type ReadCode =
  /** `alone`: the text says nothing else. */
  | { readonly kind: 'code'; readonly digits: string; readonly alone: boolean }
  /** Meant as a code, with a digit wrong, missing or too much. */
  | { readonly kind: 'slip' };

/** Before a code that stands alone: "my code is ...", "send ...". */
const before = /(?:(?:the|my|this|here is|here's|it is|it's|send) )*(?:code)?(?: is)?[:.,!\s]*/iu.source;
const alone = new RegExp(`^["'“”\\s]*${before}((?:\\d[\\s.–—-]*)+)["'“”.!\\s]*$`, 'iu');
const run = /\d(?:[\s.–—-]{0,3}\d){9,}/gu;

const digitsIn = (text: string) => text.replace(/\D/gu, '');

/** Meant as a code though it is none: said to be one, in groups of four, or about as many digits without a space. */
function isMeant(text: string): boolean {
  const groups =
    /^\d{3,5}[\s–—-]+\d{4}[\s–—-]+\d{3,5}$/u.test(text) && digitsIn(text).length > codeDigits - 2;
  return /\bcode\b/iu.test(text) || groups || /^\d{11,13}$/u.test(text);
}

/**
 * The code in a text, however it is spaced: alone, or among other words where its check digit holds; nothing when there
 * is none, also for a telephone number or a row of measures.
 */
export function readCode(text: string): ReadCode | undefined {
  const whole = alone.exec(text.trim())?.[1];
  if (whole !== undefined) {
    const digits = digitsIn(whole);
    if (digits.length === codeDigits && mod11_10.validate(digits))
      return { kind: 'code', digits, alone: true };
    return isMeant(text.trim()) ? { kind: 'slip' } : undefined;
  }
  const runs = [...text.matchAll(run)].map(([one]) => digitsIn(one));
  const [digits] = runs;
  const one = runs.length === 1 && digits?.length === codeDigits && mod11_10.validate(digits);
  return one && digits !== undefined ? { kind: 'code', digits, alone: false } : undefined;
}

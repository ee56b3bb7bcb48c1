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

/**
 * The digits of a text that is a code and nothing else, however it is spaced; `slip` when the check digit does not
 * hold; nothing when it is no code.
 */
export function readCode(text: string): string | 'slip' | undefined {
  const found = /^(?:(?:the |my )?code(?: is)?:?)?\s*((?:\d[\s.-]*){12})$/iu.exec(text.trim());
  const digits = found?.[1]?.replace(/\D/gu, '');
  if (digits === undefined) return undefined;
  return mod11_10.validate(digits) ? digits : 'slip';
}

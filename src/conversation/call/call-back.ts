import type { Call } from '../../flow/schema/call.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import type { CallState } from './call-state.ts';
import { isPhrase } from './spoken-words.ts';

/** Fewer digits are the number of a choice or a house, and no phone number. */
const fewestDigits = 5;

/** Whether a text has as many digits as a phone number. */
export const hasPhoneDigits = (text: string) => text.replace(/\D/g, '').length >= fewestDigits;

/** Whether a text looks like a phone number. */
function looksLikeNumber(text: string): boolean {
  return /^[+(\d][\d\s().x+-]*$/iu.test(text) && hasPhoneDigits(text);
}

/** The call without a number to call back. */
export function withoutNumber(call: CallState): CallState {
  const { callBack: _, ...rest } = call;
  return rest;
}

/** Keeps or erases the number to call back; nothing when the text is neither a number nor "none". */
export function takeNumber(
  record: WalkRecord,
  state: CallState,
  text: string,
  words: Call['words'],
): Turned | undefined {
  if (isPhrase(text, words.noNumber)) {
    const left = state.left ? { handsOver: 'renew' as const } : {};
    return { record: { ...record, call: withoutNumber(state) }, parts: [say('call.number.none')], ...left };
  }
  if (!looksLikeNumber(text)) return undefined;
  return {
    record: { ...record, call: { ...state, callBack: text } },
    parts: [say('call.number.kept', { number: text }, 'quiet')],
  };
}

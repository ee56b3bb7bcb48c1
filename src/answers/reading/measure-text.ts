import { ENGLISH_NUMBER_WORDS, type NotReadReason } from '../../quantities/index.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';

const { units, fractions, multipliers } = ENGLISH_NUMBER_WORDS;
// "In" is left out: "the one in the back" is no inch.
const measuring = ['mm', 'cm', 'm', 'km', 'in', 'ft', 'yd', 'mi']
  .flatMap((unit) => units[unit as keyof typeof units] ?? [])
  .concat(Object.keys(fractions), Object.keys(multipliers))
  .filter((word) => /^[a-z]+$/.test(word) && word !== 'in');
const places = [...ENGLISH_TALK_WORDS.pointing, 'front', 'left', 'back', 'right'];
const THING = new RegExp(`\\b(${places.join('|')}) ones?\\b(?!-?\\s*(?:${measuring.join('|')})\\b)`, 'g');
const OF_SEVERAL = /\bone of (?:them|those|these)\b|^ones?(?= (?:is|are|was|has)\b)/g;
const SOUNDS_LIKE: Readonly<Record<string, string>> = { to: '2', too: '2', for: '4', won: '1', ate: '8' };
const HEARD = new RegExp(`^(${Object.keys(SOUNDS_LIKE).join('|')}) (?=(?:in|${measuring.join('|')})\\b)`);

/** A measure as it is said, without "the one …", and with a letter O among figures read as a nought. */
export const measureText = (text: string): string =>
  text
    .replace(THING, '$1')
    .replace(OF_SEVERAL, '')
    .replace(/(\d)o(?=\d|\b)/g, '$10')
    .replace(HEARD, (_, word: string) => `${SOUNDS_LIKE[word]} `)
    .trim();

/** Whether a measure was heard as other words: "to feet". */
export const heardWrong = (text: string): boolean => HEARD.test(text.trim());

const GROUPED = /\b\d{1,3} \d{3}\b(?!\s*(?:mm|milli))/;
const AGE = /\b(?:years?|yrs?|months?)\b/;
const TWO_WAYS = /\d.*\b(?:tall|high)\b.*\d.*\b(?:wide|across|deep|long|thick)\b/;

/** Why a text must not be taken for one length though it could be read as one: "20 100" is no 20,100. */
export function notOneLength(text: string): NotReadReason | undefined {
  if (GROUPED.test(text) || TWO_WAYS.test(text)) return 'severalValues';
  return AGE.test(text) ? 'notUnderstood' : undefined;
}

import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from './record.ts';
import { wordsOf } from './words-of.ts';

const plain = (text: string) =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** In a text that begins with a yes, these may take it back or tie it to something: it is no clear yes. */
const denies =
  /(?:^| )(?:no|not|never|nope|nah|nobody|none|without|cannot|\w+n't|dont|doesnt|wont|cant|isnt|but|unless|except|if|only)(?: |$)/;

/** In a text that begins with a no, these take it back. */
const agrees = /(?:^| )(?:yes|yeah|yep)(?: |$)/;

/**
 * Reads a yes or no to a short question that is not of the flow; anything else is `undefined`, also a yes with a no in
 * it: "we do not", "of course not".
 */
export function readYesNo(checklist: Checklist, record: WalkRecord, text: string): 'yes' | 'no' | undefined {
  const words = wordsOf(checklist, record);
  const said = plain(text);
  if (words && isMadeOf(said, words.agree)) return 'yes';
  const longest = (phrases: readonly string[] = []) =>
    Math.max(
      0,
      ...phrases.map(plain).map((word) => (said === word || said.startsWith(`${word} `) ? word.length : 0)),
    );
  const [yes, no] = [longest(words?.yes), longest(words?.no)];
  if (yes > no) return denies.test(said) ? undefined : 'yes';
  if (no > 0) return agrees.test(said) ? undefined : 'no';
  return undefined;
}

/** Whether a text is these phrases, one after the other, and nothing else. */
function isMadeOf(said: string, phrases: readonly string[]): boolean {
  const known = [...new Set(phrases.map(plain))];
  const reached = new Set([0]);
  for (let at = 0; at < said.length; at++) {
    if (!reached.has(at)) continue;
    for (const phrase of known) {
      const end = at + phrase.length;
      if (said.startsWith(phrase, at) && (end === said.length || said[end] === ' ')) reached.add(end + 1);
    }
  }
  return said !== '' && reached.has(said.length + 1);
}

/**
 * A clear yes or no to something that cannot be undone, or to whether somebody is safe: nothing else may be said with it,
 * so that "ok wait" and "yes, she refuses" are neither.
 */
export function readClearly(
  checklist: Checklist,
  record: WalkRecord,
  text: string,
  about: 'request' | 'safe',
): 'yes' | 'no' | undefined {
  const words = wordsOf(checklist, record);
  const said = plain(text);
  if (!words) return undefined;
  if (isMadeOf(said, about === 'safe' ? words.safe : words.agree)) return 'yes';
  return isMadeOf(said, words.refuse) ? 'no' : undefined;
}

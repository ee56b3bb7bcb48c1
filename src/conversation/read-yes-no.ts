import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from './record.ts';

const plain = (text: string) =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** Said with a yes, these take nothing from it. */
const harmless = /\b(?:no|not a) (?:problem|worries|bother)\b|\bwhy not\b|\bno doubt\b/g;

/** In a text that begins with a yes, these may take it back or tie it to something: it is no clear yes. */
const denies =
  /(?:^| )(?:no|not|never|nope|nah|nobody|none|without|cannot|\w+n't|dont|doesnt|wont|cant|isnt|but|unless|except|if|only)(?: |$)/;

/** In a text that begins with a no, these may take it back. */
const agrees = /(?:^| )(?:yes|yeah|yep|sure|okay|ok)(?: |$)/;

/**
 * Reads a yes or no to a short question that is not of the flow; anything else is `undefined`, also a yes with a no in
 * it: "we do not", "of course not", "ok but not my number".
 */
export function readYesNo(checklist: Checklist, record: WalkRecord, text: string): 'yes' | 'no' | undefined {
  const { flow } = checklist;
  const words = flow.words[record.language] ?? flow.words[flow.walk.language];
  const said = plain(text).replace(harmless, '').trim() || plain(text);
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

import { stemsOf, type Token } from '../../answers/reading/tokens.ts';

/** Whether a phrase stands in a text with its words in this order, at most two others between them. */
function findsPhrase(words: readonly string[], phrase: readonly string[]): number | undefined {
  for (let start = 0; start < words.length; start++) {
    let at = start;
    let ok = words[at] === phrase[0];
    for (let part = 1; ok && part < phrase.length; part++) {
      const next = words.slice(at + 1, at + 4).indexOf(phrase[part] ?? '');
      ok = next >= 0;
      at += next + 1;
    }
    if (ok) return start;
  }
  return undefined;
}

const stemmed = new WeakMap<readonly string[], readonly (readonly string[])[]>();

/** The phrases in stems, taken apart once for each list. */
function inStems(phrases: readonly string[]): readonly (readonly string[])[] {
  const before = stemmed.get(phrases);
  if (before) return before;
  const made = phrases.map(stemsOf);
  stemmed.set(phrases, made);
  return made;
}

/** How many words before a phrase a denial reaches. */
const reach = 6;

/** Says which of some phrases a text holds, unless it is denied: "nobody can promise that …". */
export function findPhrase(
  tokens: readonly Token[],
  phrases: readonly string[],
  denies: readonly string[],
): string | undefined {
  const words = tokens.filter((token) => token.kind !== 'mark').map((token) => token.stem);
  const stemmedDenials = new Set(inStems(denies).flat());
  const all = inStems(phrases);
  return phrases.find((_, position) => {
    const stems = all[position] ?? [];
    const at = findsPhrase(words, stems);
    if (at === undefined) return false;
    const before = words.slice(Math.max(0, at - reach), at);
    return !before.some((word) => stemmedDenials.has(word) && !stems.includes(word));
  });
}

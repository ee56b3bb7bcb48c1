import { editDistance } from '../../flow/did-you-mean.ts';
import type { Corrections } from './mark-tokens.ts';
import { numberWords } from './number-words-of.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { stemOf, type Token } from './tokens.ts';

/** How many letters may be wrong in a word of this length. */
function slipsAllowed(length: number): number {
  if (length < 4) return 0;
  return length <= 5 ? 1 : length <= 8 ? 2 : 3;
}

/** One of the first two letters is nearly always right; looking at them first saves most of the comparing. */
const startsAlike = (word: string, other: string): boolean =>
  word[0] === other[0] || word[1] === other[1] || word[0] === other[1] || word[1] === other[0];

const sorted = (word: string): string => [...word].sort().join('');

/** The known words nearest to a misspelt one, all that are equally near. */
export function nearestWords(word: string, known: readonly string[]): readonly string[] {
  let limit = slipsAllowed(word.length);
  let best: string[] = [];
  if (limit === 0) return best;
  for (const candidate of known) {
    // A short word is not reached from a longer one by dropping letters: "tree" is no slip for "three".
    const most = Math.min(limit, Math.max(1, slipsAllowed(candidate.length)));
    if (Math.abs(candidate.length - word.length) > most || !startsAlike(word, candidate)) continue;
    // All the right letters in the wrong order ("vynil") count as one slip.
    const jumbled = word.length > 4 && word.length === candidate.length && sorted(word) === sorted(candidate);
    const distance = jumbled ? 1 : editDistance(word, candidate, most);
    if (distance > most) continue;
    if (distance < limit) {
      limit = distance;
      best = [candidate];
    } else best.push(candidate);
  }
  return best;
}

function startedBy(start: string, words: Iterable<string>): string[] {
  const found: string[] = [];
  for (const word of words) if (word.startsWith(start)) found.push(word);
  return found;
}

const optionsOf = (words: readonly string[], prepared: PreparedQuestion): string[] => [
  ...new Set(words.flatMap((word) => prepared.hints.get(word) ?? [])),
];

/**
 * Puts misspelt and cut-off words right to words of this question; undefined when there is nothing to put right.
 * A word that may be several is left as it stands, with the options of all of them in `loose`.
 */
export function correctSpelling(
  tokens: readonly Token[],
  prepared: PreparedQuestion,
  isWord: (word: string) => boolean,
): Corrections | undefined {
  const misspelt = new Set<Token>();
  const loose = new Map<Token, readonly string[]>();
  const corrected = tokens.map((token) => {
    if (token.kind !== 'word' || token.text.length < 3) return token;
    if (prepared.known.has(token.stem) || numberWords.has(token.text)) return token;
    // A word that is right as it stands is neither cut short nor a slip for another: "done" is not "none".
    if (isWord(token.text)) return token;
    const cut = optionsOf(startedBy(token.stem, prepared.hints.keys()), prepared);
    if (cut.length > 0) {
      loose.set(token, cut);
      return token;
    }
    const near = nearestWords(token.stem, prepared.spelling);
    const [word] = near;
    if (word === undefined) return token;
    const ids = optionsOf(near, prepared);
    if (near.length > 1 && ids.length > 1) {
      loose.set(token, ids);
      misspelt.add(token);
      return token;
    }
    const right: Token = { ...token, text: word, stem: stemOf(word) };
    misspelt.add(right);
    return right;
  });
  return misspelt.size === 0 && loose.size === 0 ? undefined : { tokens: corrected, misspelt, loose };
}

/** The options that a message may have meant, for a friendly "did you mean"; at most three. */
export function suggestOptions(
  tokens: readonly Token[],
  prepared: PreparedQuestion,
  isWord: (word: string) => boolean,
): readonly string[] {
  const strange = tokens.filter(
    (token) =>
      token.kind === 'word' &&
      token.text.length > 2 &&
      !prepared.known.has(token.stem) &&
      !isWord(token.text),
  );
  const near = (stem: string) =>
    [...prepared.hints.keys()].filter(
      (word) => startsAlike(stem, word) && editDistance(stem, word, 2) <= (word.length > 5 ? 2 : 1),
    );
  return optionsOf(
    strange.flatMap((token) => near(token.stem)),
    prepared,
  ).slice(0, 3);
}

/** Whether a word is a misspelt side: it must not be taken for a side that was not named. */
export function misspellsSide(tokens: readonly Token[], prepared: PreparedQuestion): boolean {
  return tokens.some(
    (token) =>
      token.kind === 'word' &&
      token.text.length > 3 &&
      !prepared.known.has(token.stem) &&
      !numberWords.has(token.text) &&
      nearestWords(token.stem, prepared.sideSpelling).length > 0,
  );
}

import { buildPhraseBook, type PhraseBook, phraseAt } from '../../answers/reading/phrase-book.ts';
import { ENGLISH_TALK_WORDS } from '../../answers/reading/talk-words.ts';
import { stemsOf, type Token, tokenise } from '../../answers/reading/tokens.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { Words } from '../../flow/schema/words.ts';
import type { TraineeWords } from '../schema/practice-file.ts';

/** How words are taken apart; built once for a language. */
export interface ContentReader {
  readonly sides: PhraseBook<readonly Side[]>;
  readonly small: ReadonlySet<string>;
  /** word -> the one word that stands for all that mean the same */
  readonly same: ReadonlyMap<string, string>;
}

/** What is left of a text: the words that mean something, and the sides it names. */
export interface Content {
  readonly stems: readonly string[];
  readonly sides: readonly Side[];
}

const longUnits = new Set([
  'foot',
  'feet',
  'ft',
  'yard',
  'yards',
  'metre',
  'metres',
  'meter',
  'meters',
  'percent',
]);
const little =
  'a an the of on in at to for by from it its is are was were be been and or but with within than that this these those there their them they he she you your our we i my me his her has have had so as if any some all each most one will would can could should do does did not into onto out up down over here where what which who when around round along near house home side like';

/** A word without the ending of a verb: "moving", "moved" and "move" meet; the rest need not be a word. */
export function rootOf(stem: string): string {
  const bare =
    stem.length > 5 && stem.endsWith('ing')
      ? stem.slice(0, -3)
      : stem.length > 4 && stem.endsWith('ed')
        ? stem.slice(0, -2)
        : stem;
  const single = bare === stem ? bare : bare.replace(/([bdgmnprt])\1$/, '$1');
  return single.length > 3 && single.endsWith('e') ? single.slice(0, -1) : single;
}

/** Builds a reader. Side words shorter than two letters mean no side here: "f" is a word of its own. */
export function createContentReader(words: Words, trainee: TraineeWords): ContentReader {
  const named = sideNames.flatMap((side) =>
    words.sides[side].filter((phrase) => phrase.length > 1).map((phrase) => [phrase, [side]] as const),
  );
  const every = [...words.all.filter((phrase) => phrase.includes('side') || phrase.includes('round'))];
  const none = [
    'in front of',
    'front door',
    'front yard',
    'back to back',
    'left open',
    'road out',
    'from the road',
    'read from the road',
    'power company',
    'back away',
    'take back',
    'behind the gutter',
    'behind the shrub',
    'behind the window',
    'right size',
    'the right size',
    'right down',
    'right up',
    'right at a',
    'right next',
    'right in front',
  ];
  const phrases: (readonly [string, readonly Side[]])[] = [
    ...none.map((phrase) => [phrase, []] as const),
    ...ENGLISH_TALK_WORDS.notSides.map((phrase) => [phrase, []] as const),
    ...['both sides', 'either side'].map((phrase) => [phrase, ['left', 'right'] as const] as const),
    ...every.map((phrase) => [phrase, sideNames] as const),
    ...named,
  ];
  const same = trainee.same.flatMap((list) =>
    list.flatMap((word) => {
      const stems = stemsOf(word);
      const first = stemsOf(list[0] ?? word)[0] ?? word;
      return stems.length === 1 ? [[rootOf(stems[0] ?? word), rootOf(first)] as const] : [];
    }),
  );
  return { sides: buildPhraseBook(phrases), small: new Set(little.split(' ')), same: new Map(same) };
}

/** Takes a text apart. Fractions are words too, so that "1/4 inch" and "quarter-inch" meet. */
export function contentOf(reader: ContentReader, text: string): Content {
  return contentOfTokens(reader, tokenise(text.toLowerCase()));
}

/** The same, for tokens. */
export function contentOfTokens(reader: ContentReader, tokens: readonly Token[]): Content {
  const words = tokens.filter((token) => token.kind !== 'mark');
  const stems: string[] = [];
  const sides = new Set<Side>();
  for (let at = 0; at < words.length; ) {
    const side = phraseAt(reader.sides, words, at);
    if (side) {
      for (const one of side.item) sides.add(one);
      at = side.next;
      continue;
    }
    const token = words[at];
    // A measure is read apart; only fractions name things: "quarter-inch mesh".
    if (token?.kind === 'number' || longUnits.has(token?.text ?? '')) {
      at += 1;
      continue;
    }
    const stem = token?.stem ?? '';
    const root = rootOf(stem);
    if (!reader.small.has(stem) && !reader.small.has(token?.text ?? ''))
      stems.push(reader.same.get(root) ?? root);
    at += 1;
  }
  return { stems, sides: sideNames.filter((side) => sides.has(side)) };
}

import type { Words } from '../../flow/schema/words.ts';
import { stemsOf, type Token, tokenise } from './tokens.ts';

/** A phrase to look for, in plain words; `core` leaves out what people add or drop ("the", "is"). */
export interface DangerPhrase {
  readonly words: readonly string[];
  readonly core: boolean;
  readonly text: string;
}

/** The emergency phrases of a language, ready to look for. */
export interface DangerBook {
  readonly sure: readonly DangerPhrase[];
  readonly doubt: readonly DangerPhrase[];
  /** stem of the first word -> stems of the whole phrase, the longest first */
  readonly never: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** word -> the sure phrases that hold it */
  readonly sureByWord: ReadonlyMap<string, readonly DangerPhrase[]>;
  readonly doubtByFirst: ReadonlyMap<string, readonly DangerPhrase[]>;
  /** Words of sure phrases long enough to be known in a misspelling. */
  readonly spelling: readonly string[];
}

const DROPPED = new Set(
  'a an the is are am be been being i we some very really just my our your his her their this there here right'.split(
    ' ',
  ),
);
const EXPANDED = new Map(
  Object.entries({
    theres: 'there',
    its: 'it',
    thats: 'that',
    im: 'i',
    weve: 'have',
    ive: 'have',
    theyre: 'they',
    houses: 'house',
  }),
);

/** Words of a text without those that people add or drop, with where each stood. */
export function coreWords(words: readonly string[]): { readonly word: string; readonly at: number }[] {
  return words.flatMap((word, at) => {
    if (DROPPED.has(word)) return [];
    return (EXPANDED.get(word) ?? word)
      .split(' ')
      .filter((one) => !DROPPED.has(one))
      .map((one) => ({ word: one, at }));
  });
}

/** The words of a phrase or text, without marks. */
export const plainWords = (tokens: readonly Token[]): Token[] =>
  tokens.filter((token) => token.kind !== 'mark');

function dangerPhrase(text: string): DangerPhrase {
  const words = plainWords(tokenise(text.toLowerCase())).map((token) => token.text);
  const core = coreWords(words).map((one) => one.word);
  return core.length >= 2 ? { words: core, core: true, text } : { words, core: false, text };
}

function byWord(phrases: readonly DangerPhrase[], all: boolean): Map<string, DangerPhrase[]> {
  const map = new Map<string, DangerPhrase[]>();
  for (const phrase of phrases) {
    for (const word of new Set(all ? phrase.words : phrase.words.slice(0, 1)))
      map.set(word, [...(map.get(word) ?? []), phrase]);
  }
  return map;
}

function unique(phrases: readonly DangerPhrase[]): DangerPhrase[] {
  return [...new Map(phrases.map((phrase) => [`${phrase.core} ${phrase.words.join(' ')}`, phrase])).values()];
}

function build(words: Words): DangerBook {
  const { emergency } = words;
  const sure = unique(emergency.sure.map(dangerPhrase));
  const doubt = unique(emergency.doubt.map(dangerPhrase));
  const never = new Map<string, (readonly string[])[]>();
  for (const phrase of emergency.never) {
    const stems = stemsOf(phrase);
    const first = stems[0] ?? '';
    never.set(first, [...(never.get(first) ?? []), stems]);
  }
  for (const list of never.values()) list.sort((a, b) => b.length - a.length);
  return {
    sure,
    doubt,
    never,
    sureByWord: byWord(sure, true),
    doubtByFirst: byWord(doubt, false),
    spelling: [...new Set(sure.flatMap((phrase) => phrase.words))].filter((word) => word.length >= 4),
  };
}

const books = new WeakMap<Words, DangerBook>();

/** The emergency phrases of a language; prepared once. */
export function dangerBook(words: Words): DangerBook {
  const found = books.get(words) ?? build(words);
  books.set(words, found);
  return found;
}

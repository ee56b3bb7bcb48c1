import { stemsOf, type Token } from './tokens.ts';

interface Entry<T> {
  readonly stems: readonly string[];
  readonly item: T;
}

/** Phrases by their first word, the longest first. */
export type PhraseBook<T> = ReadonlyMap<string, readonly Entry<T>[]>;

/**
 * Builds a book of phrases. Where two are the same words, `join` makes one of both; without it the first stays.
 */
export function buildPhraseBook<T>(
  phrases: Iterable<readonly [string, T]>,
  join: (first: T, second: T) => T = (first) => first,
): PhraseBook<T> {
  const known = new Map<string, Entry<T>>();
  for (const [phrase, item] of phrases) {
    const stems = stemsOf(phrase);
    const key = stems.join(' ');
    const before = known.get(key);
    known.set(key, { stems, item: before === undefined ? item : join(before.item, item) });
  }
  const book = new Map<string, Entry<T>[]>();
  for (const entry of known.values()) {
    const first = entry.stems[0] ?? '';
    const list = book.get(first);
    if (list === undefined) book.set(first, [entry]);
    else list.push(entry);
  }
  for (const list of book.values()) list.sort((a, b) => b.stems.length - a.stems.length);
  return book;
}

/** A comma inside a long phrase changes nothing: labels are often typed as they stand. */
const LONG_PHRASE = 4;

/** A dash inside a phrase ("T1-11") parts nothing, and neither does a comma in a long one. */
const passes = (mark: string | undefined, length: number): boolean =>
  mark === '-' || (mark === ',' && length >= LONG_PHRASE);

function endOf(stems: readonly string[], tokens: readonly Token[], from: number): number | undefined {
  let at = from;
  for (const stem of stems) {
    if (at > from && stem !== '-' && passes(tokens[at]?.text, stems.length)) at += 1;
    if (tokens[at]?.stem !== stem) return undefined;
    at += 1;
  }
  return at;
}

/** The longest phrase that starts at a token, and the token after it. */
export function phraseAt<T>(
  book: PhraseBook<T>,
  tokens: readonly Token[],
  from: number,
): { readonly item: T; readonly next: number } | undefined {
  const entries = book.get(tokens[from]?.stem ?? '');
  if (entries === undefined) return undefined;
  for (const entry of entries) {
    const next = endOf(entry.stems, tokens, from);
    if (next !== undefined) return { item: entry.item, next };
  }
  return undefined;
}

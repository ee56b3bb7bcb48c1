import { editDistance } from '../../flow/did-you-mean.ts';
import type { Question } from '../../flow/flow.ts';
import type { Words } from '../../flow/schema/words.ts';
import { coreWords, type DangerBook, type DangerPhrase, dangerBook, plainWords } from './emergency-words.ts';
import type { Token } from './tokens.ts';
import { vocabularyOf } from './vocabulary.ts';
import { clauseBefore, weighWords } from './weigh-danger.ts';

/** An emergency that was found: how sure, by which words, and which tokens hold them. */
export interface Danger {
  readonly sure: boolean;
  readonly matched: string;
  readonly tokens: readonly Token[];
}

/** A single word such as "trapped" is an emergency in a cry, and a mere word in a long answer. */
const MOST_WORDS_OF_A_CRY = 3;

/** Which tokens belong to a phrase that is never an emergency. */
function maskNever(
  tokens: readonly Token[],
  parted: ReadonlySet<Token>,
  book: DangerBook,
): readonly boolean[] {
  const masked = tokens.map(() => false);
  // "No, smoke everywhere": a comma in between makes it no "no smoke".
  const fits = (stem: string, token: Token | undefined, step: number) =>
    token !== undefined && token.stem === stem && (step === 0 || !parted.has(token));
  for (let at = 0; at < tokens.length; at += 1) {
    for (const stems of book.never.get(tokens[at]?.stem ?? '') ?? []) {
      if (!stems.every((stem, step) => fits(stem, tokens[at + step], step))) continue;
      masked.fill(true, at, at + stems.length);
      break;
    }
  }
  return masked;
}

interface Placed {
  readonly word: string;
  readonly at: number;
}

function findAt(
  phrase: DangerPhrase,
  words: readonly Placed[],
  masked: readonly boolean[],
  from: number,
): boolean {
  return phrase.words.every((word, step) => {
    const found = words[from + step];
    return found !== undefined && found.word === word && !masked[found.at];
  });
}

interface Found {
  readonly phrase: DangerPhrase;
  readonly first: number;
  readonly last: number;
}

function findPhrases(
  phrasesOf: (word: string) => readonly DangerPhrase[] | undefined,
  plain: readonly Placed[],
  core: readonly Placed[],
  masked: readonly boolean[],
): Found[] {
  const found: Found[] = [];
  for (const words of [core, plain]) {
    for (let from = 0; from < words.length; from += 1) {
      for (const phrase of phrasesOf(words[from]?.word ?? '') ?? []) {
        if (phrase.core !== (words === core) || phrase.words[0] !== words[from]?.word) continue;
        if (!findAt(phrase, words, masked, from)) continue;
        found.push({
          phrase,
          first: words[from]?.at ?? 0,
          last: words[from + phrase.words.length - 1]?.at ?? 0,
        });
      }
    }
  }
  return found;
}

const sorted = (word: string): string => [...word].sort().join('');

/**
 * Letters in a wrong place, one too many or too few; the first letter must be right. A wrong letter counts in long
 * words only: "spoke" is not "smoke" and "frames" are not "flames".
 */
function misspells(word: string, right: string): boolean {
  if (word.length < 4 || word[0] !== right[0]) return false;
  if (right.length === 4) return word.length === 4 && sorted(word) === sorted(right);
  const most = right.length >= 9 ? 2 : 1;
  if (editDistance(word, right, most) > most) return false;
  return right.length >= 8 || word.length !== right.length || sorted(word) === sorted(right);
}

/** The words with misspellings of danger words put right; undefined when there are none. */
function putRight(
  words: readonly string[],
  book: DangerBook,
  known: ReadonlySet<string>,
): string[] | undefined {
  let changed = false;
  const right = words.map((word) => {
    if (word.length < 4 || known.has(word) || book.sureByWord.has(word) || book.doubtByFirst.has(word))
      return word;
    const found = book.spelling.find((candidate) => misspells(word, candidate));
    if (found !== undefined) changed = true;
    return found ?? word;
  });
  return changed ? right : undefined;
}

function search(texts: readonly string[], masked: readonly boolean[], book: DangerBook) {
  const plain = texts.map((word, at) => ({ word, at }));
  const core = coreWords(texts);
  return {
    sure: findPhrases((word) => book.sureByWord.get(word), plain, core, masked),
    doubt: findPhrases((word) => book.doubtByFirst.get(word), plain, core, masked),
  };
}

function weigh(found: Found, level: 0 | 1 | 2, tokens: readonly Token[], words: readonly Token[]): number {
  const cry = found.phrase.words.length > 1 || words.length <= MOST_WORDS_OF_A_CRY;
  const first = words[found.first] as Token;
  return weighWords(clauseBefore(tokens, first), cry ? level : Math.min(level, 1));
}

/**
 * Looks for an emergency: phrases that are never one are masked first, what is denied ("no smoke") does not count,
 * and what is supposed or past ("if it were on fire") counts one step less.
 */
export function findDanger(
  tokens: readonly Token[],
  words: Words,
  questions: readonly Question[],
): Danger | undefined {
  const book = dangerBook(words);
  const spoken = plainWords(tokens);
  const parted = new Set(
    tokens.filter((_, at) => tokens[at - 1]?.kind === 'mark' && !'-/&'.includes(tokens[at - 1]?.text ?? '')),
  );
  const masked = maskNever(spoken, parted, book);
  const texts = spoken.map((token) => token.text);
  let found = search(texts, masked, book);
  if (found.sure.length === 0) {
    const right = putRight(texts, book, vocabularyOf(questions));
    if (right !== undefined) found = search(right, masked, book);
  }
  let best: { level: number; found: Found } | undefined;
  for (const [list, level] of [
    [found.sure, 2],
    [found.doubt, 1],
  ] as const) {
    for (const one of list) {
      const weighed = weigh(one, level, tokens, spoken);
      if (weighed > (best?.level ?? 0)) best = { level: weighed, found: one };
    }
  }
  if (best === undefined) return undefined;
  const covered = spoken.slice(best.found.first, best.found.last + 1);
  return { sure: best.level === 2, matched: covered.map((token) => token.text).join(' '), tokens: covered };
}

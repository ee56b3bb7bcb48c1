import type { Mark, Meaning, Role } from './mark.ts';
import { numberWords } from './number-words-of.ts';
import { phraseAt } from './phrase-book.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { settleMarks } from './settle-marks.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import type { Token } from './tokens.ts';

const MARK_ROLES: Readonly<Record<string, Role>> = {
  ',': 'comma',
  ';': 'stop',
  '.': 'stop',
  '!': 'stop',
  '?': 'stop',
  '|': 'stop',
  ':': 'colon',
  '=': 'colon',
  '-': 'to',
  '/': 'slash',
  '&': 'and',
  '+': 'and',
};
const ordinals = new Map(ENGLISH_TALK_WORDS.ordinals.map((word, index) => [word, index + 1]));
const lastWords = new Set(ENGLISH_TALK_WORDS.last);

/** What a word put right, or cut short, may stand for. */
export interface Corrections {
  readonly tokens: readonly Token[];
  readonly misspelt: ReadonlySet<Token>;
  /** Words that may be one of several: the options of all of them. */
  readonly loose: ReadonlyMap<Token, readonly string[]>;
}

const decisive: ReadonlySet<Role> = new Set(['option', 'sides', 'yes', 'no']);

function letterOf(token: Token, found: Meaning | undefined): Meaning | undefined {
  if (token.kind !== 'word' || !/^[a-z]$/.test(token.text)) return undefined;
  if (found !== undefined && decisive.has(found.role)) return undefined;
  return { role: 'letter', value: token.text.charCodeAt(0) - 96 };
}

function plainMeaning(token: Token, prepared: PreparedQuestion): Meaning {
  switch (token.kind) {
    case 'number': {
      const ids = prepared.hints.get(token.stem);
      return ids === undefined ? { role: 'number', value: token.value } : { role: 'hint', ids };
    }
    case 'ordinal':
      return { role: 'ordinal', value: token.value };
    case 'mark':
      return {
        role: MARK_ROLES[token.text] ?? 'filler',
      };
    case 'fraction':
      return { role: 'word' };
    case 'word': {
      const ids = prepared.hints.get(token.stem);
      if (ids !== undefined) return { role: 'hint', ids };
      const number = numberWords.get(token.text);
      if (number !== undefined) return { role: 'number', value: number };
      const place = ordinals.get(token.text);
      if (place !== undefined) return { role: 'ordinal', value: place };
      return lastWords.has(token.text) ? { role: 'ordinal', value: -1 } : { role: 'word' };
    }
    default:
      return token.kind satisfies never;
  }
}

/** What a sign or letter is beside other words: "wood?" is a guess, "bark n grass" two things. */
function besideWords(tokens: readonly Token[], at: number): Meaning | undefined {
  const text = tokens[at]?.text;
  // "20, ?, 30": where a value is due it means that none is known.
  const due = at > 0 && tokens[at - 1]?.text === ',';
  if (text === '?' && tokens.length > 1 && !due) return { role: 'guess' };
  return text === 'n' && at > 0 && at < tokens.length - 1 ? { role: 'and' } : undefined;
}

/** "All but not sure about the back": the "not" of "but not" may begin "not sure". */
function endOfPhrase(
  phrase: { readonly item: Meaning; readonly next: number } | undefined,
  tokens: readonly Token[],
  prepared: PreparedQuestion,
  at: number,
): number {
  if (phrase === undefined) return at + 1;
  const last = phrase.next - 1;
  if (phrase.item.role !== 'except' || last === at || tokens[last]?.text !== 'not') return phrase.next;
  return phraseAt(prepared.book, tokens, last)?.item.role === 'notSure' ? last : phrase.next;
}

/** Gives every word and phrase of a message its role for this question, the longest phrase first. */
export function markTokens(
  tokens: readonly Token[],
  prepared: PreparedQuestion,
  corrections?: Corrections,
): readonly Mark[] {
  const marks: Mark[] = [];
  const read = corrections?.tokens ?? tokens;
  for (let at = 0; at < read.length; ) {
    const token = read[at] as Token;
    const phrase = phraseAt(prepared.book, read, at);
    const letter = phrase === undefined || phrase.next === at + 1 ? letterOf(token, phrase?.item) : undefined;
    const next = letter === undefined ? endOfPhrase(phrase, read, prepared, at) : at + 1;
    const loose = corrections?.loose.get(token);
    const meaning: Meaning =
      besideWords(read, at) ??
      (loose !== undefined
        ? { role: 'hint', ids: loose }
        : (letter ?? phrase?.item ?? plainMeaning(token, prepared)));
    const covered = read.slice(at, next);
    const last = covered.at(-1) ?? token;
    marks.push({
      ...meaning,
      text: covered.length === 1 ? token.text : covered.map((one) => one.text).join(' '),
      start: token.start,
      end: last.end,
      ...(corrections !== undefined && covered.some((one) => corrections.misspelt.has(one))
        ? { misspelt: true }
        : {}),
    });
    at = next;
  }
  return settleMarks(marks, prepared);
}

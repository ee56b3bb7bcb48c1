import { buildPhraseBook, type PhraseBook, phraseAt } from '../../answers/reading/phrase-book.ts';
import { ENGLISH_TALK_WORDS } from '../../answers/reading/talk-words.ts';
import type { Token } from '../../answers/reading/tokens.ts';
import type { Words } from '../../flow/schema/words.ts';
import type { TraineeWords, VerbName } from '../schema/practice-file.ts';

export interface VerbBook {
  /** Verbs with more words after them: "go to the roof". */
  readonly leading: PhraseBook<VerbName>;
  /** Verbs that are all that is said: "next". */
  readonly whole: PhraseBook<VerbName>;
  readonly polite: PhraseBook<true>;
}

/** A message parted into what is done and with what. */
export interface Parted {
  readonly verb: VerbName | undefined;
  readonly rest: readonly Token[];
}

/** Verbs that stand alone: with more words after them they mean nothing. */
const alone: ReadonlySet<VerbName> = new Set([
  'next',
  'back',
  'hint',
  'findings',
  'advised',
  'where',
  'firstPage',
  'done',
  'help',
  'pause',
]);

/** Builds the book of verbs from the practice words and the flow's own words for going somewhere. */
export function buildVerbBook(words: Words, trainee: TraineeWords): VerbBook {
  const own = Object.entries(trainee.verbs)
    .filter(([verb]) => verb !== 'everything')
    .flatMap(([verb, phrases]) => phrases.map((phrase) => [phrase, verb as VerbName] as const));
  const go = [...words.commands.jump, ...ENGLISH_TALK_WORDS.jump].map((phrase) => [phrase, 'go'] as const);
  return {
    leading: buildPhraseBook([...own.filter(([, verb]) => !alone.has(verb)), ...go]),
    whole: buildPhraseBook(own.filter(([, verb]) => alone.has(verb))),
    polite: buildPhraseBook(ENGLISH_TALK_WORDS.polite.map((phrase) => [phrase, true] as const)),
  };
}

/** The tokens from a word on, with the marks between them: commas part a list. */
function restFrom(tokens: readonly Token[], word: Token | undefined): readonly Token[] {
  return word === undefined ? [] : tokens.slice(tokens.indexOf(word));
}

/** Parts a message; polite words before the verb are passed over. */
export function partMessage(book: VerbBook, tokens: readonly Token[]): Parted {
  const words = tokens.filter((token) => token.kind !== 'mark' || token.text === '?');
  for (let at = 0; at < words.length; ) {
    const whole = phraseAt(book.whole, words, at);
    if (whole && words.slice(whole.next).every((word) => word.kind === 'mark'))
      return { verb: whole.item, rest: [] };
    const leading = phraseAt(book.leading, words, at);
    if (leading) return { verb: leading.item, rest: restFrom(tokens, words[leading.next]) };
    const polite = phraseAt(book.polite, words, at);
    if (!polite) break;
    at = polite.next;
  }
  return { verb: undefined, rest: tokens };
}

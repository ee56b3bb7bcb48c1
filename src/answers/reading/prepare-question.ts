import type { Question } from '../../flow/flow.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { Words } from '../../flow/schema/words.ts';
import { gatherHints } from './gather-hints.ts';
import type { Meaning } from './mark.ts';
import { numberWords } from './number-words-of.ts';
import { buildPhraseBook, type PhraseBook } from './phrase-book.ts';
import { measuredKinds, type PreparedOption, prepareOptions } from './prepare-options.ts';
import { ENGLISH_TALK_WORDS, type TalkWords } from './talk-words.ts';
import { stemsOf } from './tokens.ts';

/** A question with everything that is looked up while a message is read. */
export interface PreparedQuestion {
  readonly question: Question;
  readonly options: readonly PreparedOption[];
  /** The option that "none" means. */
  readonly noneId: string | undefined;
  readonly book: PhraseBook<Meaning>;
  /** word -> the options in whose labels or words it stands */
  readonly hints: ReadonlyMap<string, readonly string[]>;
  /** word -> the options in whose labels or words it stands only as what is not there: "tank" in "no tank" */
  readonly absent: ReadonlyMap<string, readonly string[]>;
  /** Every word that is known here, in stems. */
  readonly known: ReadonlySet<string>;
  /** Words to which a misspelt one may be put right. */
  readonly spelling: readonly string[];
  /** The words of sides among them, where sides are wanted. */
  readonly sideSpelling: readonly string[];
  readonly sideful: boolean;
}

type Phrase = readonly [string, Meaning];

const all = (phrases: readonly string[], role: Meaning['role']): Phrase[] =>
  phrases.map((phrase) => [phrase, { role }]);

function sidePhrases(words: Words, talk: TalkWords, letters: boolean, measures: boolean): Phrase[] {
  const named = sideNames.flatMap((side: Side) =>
    [...words.sides[side], ...(letters ? [talk.sideLetters[side]] : [])]
      .filter((phrase) => phrase.length > 1 || letters)
      .map((phrase): Phrase => [phrase, { role: 'sides', sides: [side] }]),
  );
  const both = talk.bothSides.map((phrase): Phrase => [phrase, { role: 'sides', sides: ['left', 'right'] }]);
  return [
    // "Left over 50" is more than 50 on the left.
    ...all(measures ? talk.notSides.filter((phrase) => phrase !== 'left over') : talk.notSides, 'filler'),
    ...all(talk.rest, 'rest'),
    ...both,
    ...named,
    ...all(talk.same, 'same'),
    ...all([...talk.allSides, ...words.all], 'allSides'),
  ];
}

/** Where the sides are the choices, "all 4" is all of them; elsewhere it is the fourth choice on every side. */
function countedSides({ kind }: Question): Phrase[] {
  return kind === 'yesNo' || kind === 'sides' ? all(['all 3', 'all 4'], 'allSides') : [];
}

function answerPhrases(words: Words, talk: TalkWords): Phrase[] {
  return [
    ...all(talk.nothingElse, 'nothingElse'),
    ...all(words.skip, 'skip'),
    ...all(talk.guessNo, 'guessNo'),
    ...all(talk.guessYes, 'guessYes'),
    ...all(talk.echoYes, 'echoYes'),
    ...all(talk.echoNo, 'echoNo'),
    ...all(words.notSure, 'notSure'),
    ...all(words.yes, 'yes'),
    ...all(words.no, 'no'),
    ...all(words.none, 'none'),
    ...all([...words.all, 'both'], 'all'),
  ];
}

function joiningPhrases(words: Words, talk: TalkWords): Phrase[] {
  return [
    ...all(talk.negators, 'negator'),
    ...all(words.except, 'except'),
    ...all(words.and, 'and'),
    ...all(talk.or, 'or'),
    ...all(talk.guess, 'guess'),
    ...all(talk.told, 'told'),
    ...all(talk.rangeTo, 'to'),
    ...all(talk.fillers, 'filler'),
  ];
}

const sideWords = (words: Words): string[] =>
  [...new Set(Object.values(words.sides).flat().flatMap(stemsOf))].filter((word) => word.length > 3);

/** "Two car lengths" is said in figures too. */
function withFigure(phrase: string): string[] {
  const [first = '', ...others] = phrase.split(' ');
  const value = numberWords.get(first);
  return value === undefined || others.length === 0 ? [phrase] : [phrase, [value, ...others].join(' ')];
}

/** Where two options share a phrase, it names both. */
function joinMeanings(first: Meaning, second: Meaning): Meaning {
  if (first.role !== 'option' || second.role !== 'option') return first;
  return { role: 'option', ids: [...new Set([...(first.ids ?? []), ...(second.ids ?? [])])] };
}

function prepare(question: Question, words: Words): PreparedQuestion {
  const talk = ENGLISH_TALK_WORDS;
  const options = prepareOptions(question);
  const sideful = question.by === 'side' || question.kind === 'sides';
  const named = options.flatMap((option) =>
    option.phrases
      .flatMap(withFigure)
      .map((phrase): Phrase => [phrase, { role: 'option', ids: [option.id] }]),
  );
  const letters = question.kind !== 'choice' && question.kind !== 'several';
  const answers = [
    ...(sideful
      ? [...sidePhrases(words, talk, letters, measuredKinds.has(question.kind)), ...countedSides(question)]
      : []),
    ...answerPhrases(words, talk),
    ...(question.kind === 'yesNo' ? all(talk.terms, 'terms') : []),
  ];
  const joining = joiningPhrases(words, talk);
  const common = new Set([...all(words.no, 'no'), ...joining].flatMap(([phrase]) => stemsOf(phrase)));
  // A word out of the phrases of yes and no says neither.
  const { hints, absent } = gatherHints(question.kind === 'yesNo' ? [] : options, common);
  const phrases = [...named, ...answers, ...joining];
  const least = question.kind === 'yesNo' ? 3 : 4;
  const said = question.kind === 'yesNo' ? [...named, ...answers] : answers;
  const answerWords = said.flatMap(([phrase]) => stemsOf(phrase)).filter((word) => word.length >= least);
  return {
    question,
    options,
    noneId: (options.find((option) => option.alone) ?? options.find((option) => option.id === 'none'))?.id,
    book: buildPhraseBook(phrases, joinMeanings),
    hints,
    absent,
    known: new Set(phrases.flatMap(([phrase]) => stemsOf(phrase))),
    spelling: [...new Set([...hints.keys(), ...answerWords])].filter((word) => !common.has(word)),
    sideSpelling: sideful ? sideWords(words).filter((word) => !common.has(word)) : [],
    sideful,
  };
}

const cache = new WeakMap<Words, WeakMap<Question, PreparedQuestion>>();

/** The question prepared for reading; built once for each question and words. */
export function prepareQuestion(question: Question, words: Words): PreparedQuestion {
  const known = cache.get(words) ?? new WeakMap<Question, PreparedQuestion>();
  cache.set(words, known);
  const found = known.get(question) ?? prepare(question, words);
  known.set(question, found);
  return found;
}

import { readBound } from '../../flow/bound.ts';
import type { Question } from '../../flow/flow.ts';
import { type Side, sideNames } from '../../flow/schema/base.ts';
import type { Words } from '../../flow/schema/words.ts';
import { gatherHints } from './gather-hints.ts';
import type { Meaning } from './mark.ts';
import { buildPhraseBook, type PhraseBook } from './phrase-book.ts';
import { ENGLISH_TALK_WORDS, type TalkWords } from './talk-words.ts';
import { stemsOf } from './tokens.ts';
import { wordings } from './wordings.ts';

/** An option, a pick of a measure, or one of yes and no. */
export interface PreparedOption {
  readonly id: string;
  readonly alone: boolean;
  /** Of a pick, in base units. */
  readonly value?: number;
  readonly phrases: readonly string[];
}

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

const measured = new Set(['length', 'number', 'slope']);

/** A label up to its first colon, comma or bracket: "Closed in" of "Closed in: a flat board". */
function headOf(label: string): string | undefined {
  const head = label.split(/[:,(;]/)[0]?.trim() ?? '';
  return head.length > 2 && head.length < label.length ? head : undefined;
}

/** Heads of labels name their option too, where no other option is named so. */
function withHeads(
  options: readonly PreparedOption[],
  labels: readonly (readonly string[])[],
): PreparedOption[] {
  const keyOf = (phrase: string) => stemsOf(phrase).join(' ');
  const heads = labels.map((list) => [...new Set(list.flatMap((label) => headOf(label) ?? []))]);
  return options.map((option, at) => {
    const taken = new Set(
      options.flatMap((other, index) =>
        index === at ? [] : [...other.phrases, ...(heads[index] ?? [])].map(keyOf),
      ),
    );
    const own = (heads[at] ?? []).filter((head) => !taken.has(keyOf(head)));
    return { ...option, phrases: [...option.phrases, ...own] };
  });
}

function prepareOptions(question: Question): PreparedOption[] {
  if (question.kind === 'yesNo') return ['yes', 'no'].map((id) => ({ id, alone: false, phrases: [] }));
  if (measured.has(question.kind)) {
    const picks = (question.picks ?? []).map((pick) => {
      const bound = readBound(pick.value, question.kind);
      const value = typeof bound === 'number' ? { value: bound } : {};
      return {
        id: String(pick.value),
        alone: false,
        phrases: [...wordings(pick.label), ...pick.words],
        ...value,
      };
    });
    return withHeads(
      picks,
      (question.picks ?? []).map((pick) => wordings(pick.label)),
    );
  }
  const options = (question.options ?? []).map((option) => ({
    id: option.id,
    alone: option.alone === true,
    phrases: [option.id.replaceAll('-', ' '), ...wordings(option.label), ...option.words],
  }));
  return withHeads(
    options,
    (question.options ?? []).map((option) => wordings(option.label)),
  );
}

const all = (phrases: readonly string[], role: Meaning['role']): Phrase[] =>
  phrases.map((phrase) => [phrase, { role }]);

function sidePhrases(words: Words, talk: TalkWords, letters: boolean): Phrase[] {
  const named = sideNames.flatMap((side: Side) =>
    [...words.sides[side], ...(letters ? [talk.sideLetters[side]] : [])]
      .filter((phrase) => phrase.length > 1 || letters)
      .map((phrase): Phrase => [phrase, { role: 'sides', sides: [side] }]),
  );
  const both = talk.bothSides.map((phrase): Phrase => [phrase, { role: 'sides', sides: ['left', 'right'] }]);
  return [
    ...all(talk.notSides, 'filler'),
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
    option.phrases.map((phrase): Phrase => [phrase, { role: 'option', ids: [option.id] }]),
  );
  const letters = question.kind !== 'choice' && question.kind !== 'several';
  const answers = [
    ...(sideful ? [...sidePhrases(words, talk, letters), ...countedSides(question)] : []),
    ...answerPhrases(words, talk),
  ];
  const joining = joiningPhrases(words, talk);
  const common = new Set([...all(words.no, 'no'), ...joining].flatMap(([phrase]) => stemsOf(phrase)));
  const { hints, absent } = gatherHints(options, common);
  const phrases = [...named, ...answers, ...joining];
  const least = question.kind === 'yesNo' ? 3 : 4;
  const answerWords = answers.flatMap(([phrase]) => stemsOf(phrase)).filter((word) => word.length >= least);
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

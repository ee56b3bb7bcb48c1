import type { Question } from '../../flow/flow.ts';
import type { Words } from '../../flow/schema/words.ts';
import { tokenise } from './tokens.ts';
import { wordings } from './wordings.ts';

function wordsOfQuestion(question: Question): string[] {
  const { ask, look, good, why, options, picks, words } = question;
  const texts = [
    ask,
    look,
    good,
    why,
    ...(options ?? []).map((one) => one.label),
    ...(picks ?? []).map((one) => one.label),
  ];
  const spoken = [
    ...[...(options ?? []), ...(picks ?? [])].flatMap((one) => one.words),
    ...(words?.yes ?? []),
    ...(words?.no ?? []),
  ];
  return [...texts.flatMap(wordings), ...spoken, question.call.say, question.call.listen];
}

const vocabularies = new WeakMap<readonly Question[], ReadonlySet<string>>();

/** Every word of the questions: none of them is a misspelling of something else. */
export function vocabularyOf(questions: readonly Question[]): ReadonlySet<string> {
  const build = () =>
    new Set(
      questions
        .flatMap(wordsOfQuestion)
        .flatMap((text) => tokenise(text.toLowerCase()).map((token) => token.text)),
    );
  const found = vocabularies.get(questions) ?? build();
  vocabularies.set(questions, found);
  return found;
}

function phrasesIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(phrasesIn) : [];
}

const wordLists = new WeakMap<Words, ReadonlySet<string>>();

/** Every word of a words file. */
export function vocabularyOfWords(words: Words): ReadonlySet<string> {
  const build = () =>
    new Set(phrasesIn(words).flatMap((phrase) => tokenise(phrase.toLowerCase()).map((token) => token.text)));
  const found = wordLists.get(words) ?? build();
  wordLists.set(words, found);
  return found;
}

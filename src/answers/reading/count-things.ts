import type { Question } from '../../flow/flow.ts';
import { sideNames } from '../../flow/schema/base.ts';
import { numberWords, numberWordsOf } from './number-words-of.ts';
import type { ReadingContext } from './reading.ts';
import { stemsOf, type Token } from './tokens.ts';
import { wordings } from './wordings.ts';

type Group = ReadingContext['groups'][number];

/** What the things of a group may be called. */
interface Names {
  /** "Tree", "trees". */
  readonly group: ReadonlySet<string>;
  /** "Pine", "oak": the words of the question what kind a member is. */
  readonly kinds: ReadonlySet<string>;
  /** Words that stand for one of them: "ones", "in front". */
  readonly standing: ReadonlySet<string>;
}

const SHORTEST = 3;
const SIZES = new Set(['big', 'large', 'huge', 'tall', 'small', 'little', 'tiny', 'dead', 'live']);

const asksKind = ({ kind, ask }: Question): boolean =>
  kind === 'choice' && wordings(ask).some((text) => /\bkind of\b/i.test(text));

/** The words for what a member is: "pine" of "what kind of tree is it". */
function kindWords(group: Group, questions: readonly Question[]): string[] {
  return questions
    .filter((question) => question.of === group.id && asksKind(question))
    .flatMap((question) => question.options ?? [])
    .flatMap((option) => [...wordings(option.label), ...option.words]);
}

/** "Front", but not the words of "at the front". */
const isOneWord = (phrase: string): boolean => phrase.length > SHORTEST && !phrase.includes(' ');

function namesOf(group: Group, { questions, words }: ReadingContext): Names {
  const own = new Set([group.one, group.many].flatMap(stemsOf));
  const kinds = kindWords(group, questions)
    .flatMap(stemsOf)
    .filter(
      (stem) => !own.has(stem) && stem.length >= SHORTEST && !SIZES.has(stem) && !numberWords.has(stem),
    );
  return {
    group: own,
    kinds: new Set(kinds),
    standing: new Set(['one', ...sideNames.flatMap((side) => words.sides[side].filter(isOneWord))]),
  };
}

/** An amount with the words up to the next one. */
interface Chunk {
  readonly amount: number;
  readonly article: boolean;
  /** Said as a number, which counts without a name beside it. */
  readonly plain: boolean;
  readonly words: Token[];
}

const ARTICLES = new Set(['a', 'an', 'another']);
const LOOSE =
  /^(?:few|several|lot|lots|bunch|row|group|stand|grove|line|dozen|dozens|hundred|handful|cluster|clump|hedge|of|or)$/;

function amountAt(token: Token, numbers: Readonly<Record<string, number>>): Omit<Chunk, 'words'> | undefined {
  if (token.kind === 'number') return { amount: token.value, article: false, plain: true };
  if (token.kind !== 'word') return undefined;
  if (ARTICLES.has(token.text)) return { amount: 1, article: true, plain: false };
  if (token.text === 'no') return { amount: 0, article: false, plain: true };
  const value = Object.hasOwn(numbers, token.text) ? numbers[token.text] : undefined;
  return value === undefined || token.text === 'oh'
    ? undefined
    : { amount: value, article: false, plain: true };
}

/** "A couple of": the article and the pair are one amount of two. */
function pairAt(tokens: readonly Token[], at: number): number {
  const from = tokens[at]?.text === 'a' ? at + 1 : at;
  if (!/^(?:couple|pair)$/.test(tokens[from]?.text ?? '')) return 0;
  return (tokens[from + 1]?.text === 'of' ? from + 2 : from + 1) - at;
}

/** "The big one": here the word is what is counted, and no number. */
function isThing(tokens: readonly Token[], at: number, names: Names): boolean {
  const before = tokens[at - 1];
  if (!/^ones?$/.test(tokens[at]?.text ?? '') || before?.kind !== 'word') return false;
  return !isName(before, names) && !/^(?:and|plus|with|there|is|are|just|only)$/.test(before.text);
}

function chunksOf(
  tokens: readonly Token[],
  names: Names,
  numbers: Readonly<Record<string, number>>,
): Chunk[] {
  const chunks: Chunk[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at] as Token;
    const pair = pairAt(tokens, at);
    const open = chunks.at(-1);
    const thing = open !== undefined && isThing(tokens, at, names);
    const amount =
      pair > 0 ? { amount: 2, article: false, plain: false } : thing ? undefined : amountAt(token, numbers);
    if (amount !== undefined) chunks.push({ ...amount, words: [] });
    else if (token.kind !== 'mark') open?.words.push(token);
    if (pair > 0) at += pair - 1;
  }
  return chunks;
}

const isName = ({ stem }: Token, names: Names): boolean =>
  names.group.has(stem) || names.kinds.has(stem) || names.standing.has(stem);
const sumOf = (chunks: readonly Chunk[]): number => chunks.reduce((sum, { amount }) => sum + amount, 0);
const isOf = (set: ReadonlySet<string>) => (token: Token) => set.has(token.stem);

/** Whether it can be told that so many of the things are meant. */
function isPlain({ article, words }: Chunk, names: Names): boolean {
  const named = words.filter((word) => isName(word, names));
  if (named.length === 0 || words.some((word) => LOOSE.test(word.text))) return false;
  const first = named[0] as Token;
  return !article || first.text === first.stem || first.text.endsWith('ss') || first.text.endsWith('us');
}

/**
 * How many things are named one after the other: "2 big pines and an oak". `unclear` when some of what is counted may be
 * no such thing or may be part of the rest; undefined when nothing but one number is said.
 */
export function countThings(
  tokens: readonly Token[],
  group: Group,
  context: ReadingContext,
): number | 'unclear' | undefined {
  const { numbers } = numberWordsOf(context.words);
  const names = namesOf(group, context);
  const chunks = chunksOf(tokens, names, numbers);
  const [first, ...others] = chunks;
  if (first === undefined) return undefined;
  // "No big trees" leaves open how many small ones there are.
  if (others.length === 0 && first.amount === 0)
    return SIZES.has(first.words[0]?.text ?? '') ? 'unclear' : undefined;
  if (others.length === 0) return !first.plain && isPlain(first, names) ? first.amount : undefined;
  if (first.words.length === 0 && others.every((chunk) => isPlain(chunk, names)))
    return sumOf(others) === first.amount ? first.amount : 'unclear';
  if (!chunks.every((chunk) => isPlain(chunk, names))) return 'unclear';
  const rest = sumOf(others);
  const whole = first.words.some(isOf(names.group)) && !first.words.some(isOf(names.kinds));
  // "3 trees, two pines and an oak" names the same three again.
  if (whole && first.amount > 1) return rest === first.amount ? rest : 'unclear';
  return first.amount + rest;
}

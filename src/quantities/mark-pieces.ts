import { type Dimension, dimensionOf, type UnitId } from './conversions.ts';
import type { NumberWords } from './number-words.ts';
import { type Piece, splitAnswer } from './split-answer.ts';

/** What a word or phrase does in a typed quantity. */
export type Role =
  | 'cardinal'
  | 'multiplier'
  | 'fraction'
  | 'vague'
  | 'article'
  | 'and'
  | 'of'
  | 'to'
  | 'between'
  | 'minus'
  | 'about'
  | 'lessThan'
  | 'moreThan'
  | 'atMost'
  | 'atLeast'
  | 'nearly'
  | 'justOver'
  | 'nothing'
  | 'by'
  | 'flat'
  | 'filler'
  | 'fractionEnding'
  | 'place'
  | 'unit'
  | 'hyphen'
  | 'comma'
  | 'number'
  | 'ratio'
  | 'unknown';

/** A piece with its role; `value` and `most` for numbers, `unit` for units. */
export type Marked = {
  readonly role: Role;
  readonly text: string;
  readonly value: number;
  readonly most: number;
  readonly unit?: UnitId;
};

type Entry = { readonly words: readonly string[]; readonly mark: Marked };
type Lexicon = ReadonlyMap<string, readonly Entry[]>;

const cache = new WeakMap<NumberWords, Map<Dimension, Lexicon>>();

function plainEntries(words: NumberWords): [Role, readonly string[]][] {
  return [
    ['article', words.articles],
    ['and', words.and],
    ['of', words.of],
    ['to', words.to],
    ['between', words.between],
    ['minus', words.minus],
    ['about', words.about],
    ['lessThan', words.lessThan],
    ['moreThan', words.moreThan],
    ['atMost', words.atMost],
    ['atLeast', words.atLeast],
    ['nearly', words.nearly],
    ['justOver', words.justOver],
    ['nothing', words.nothing],
    ['by', words.by],
    ['flat', words.flat],
    ['hyphen', ['-']],
    ['comma', [',']],
    ['place', words.places],
    ['fractionEnding', words.fractionEndings],
    ['filler', words.fillers],
  ];
}

/** A unit spelt with a digit (`ft2`) is kept out where it could be read as `5 ft 2`. */
function unitAllowed(unit: UnitId, phrase: string, dimension: Dimension): boolean {
  return dimensionOf(unit) === dimension || !/\d/.test(phrase);
}

function buildLexicon(words: NumberWords, dimension: Dimension): Lexicon {
  const lexicon = new Map<string, Entry[]>();
  const add = (phrase: string, role: Role, value = Number.NaN, most = value, unit?: UnitId): void => {
    const parts = splitAnswer(phrase).map((piece) => piece.text);
    const mark: Marked = { role, text: phrase, value, most, ...(unit === undefined ? {} : { unit }) };
    const first = parts[0] ?? '';
    lexicon.set(first, [...(lexicon.get(first) ?? []), { words: parts, mark }]);
  };
  for (const [word, value] of Object.entries(words.numbers)) add(word, 'cardinal', value);
  for (const [word, value] of Object.entries(words.multipliers)) add(word, 'multiplier', value);
  for (const [word, value] of Object.entries(words.fractions)) add(word, 'fraction', value);
  for (const [word, [least, most]] of Object.entries(words.vague)) add(word, 'vague', least, most);
  for (const [unit, phrases] of Object.entries(words.units) as [UnitId, readonly string[]][]) {
    for (const phrase of phrases) {
      if (unitAllowed(unit, phrase, dimension)) add(phrase, 'unit', Number.NaN, Number.NaN, unit);
    }
  }
  for (const [role, phrases] of plainEntries(words)) for (const phrase of phrases) add(phrase, role);
  for (const entries of lexicon.values()) entries.sort((a, b) => b.words.length - a.words.length);
  return lexicon;
}

function lexiconFor(words: NumberWords, dimension: Dimension): Lexicon {
  const known = cache.get(words) ?? new Map<Dimension, Lexicon>();
  cache.set(words, known);
  const found = known.get(dimension) ?? buildLexicon(words, dimension);
  known.set(dimension, found);
  return found;
}

function plainMark(piece: Piece): Marked {
  if (piece.type === 'word')
    return { role: 'unknown', text: piece.text, value: Number.NaN, most: Number.NaN };
  return { role: piece.type, text: piece.text, value: piece.value, most: piece.value };
}

/** Gives every word or phrase of a typed answer its role, longest phrase first. */
export function markPieces(
  pieces: readonly Piece[],
  words: NumberWords,
  dimension: Dimension,
): readonly Marked[] {
  const lexicon = lexiconFor(words, dimension);
  const marked: Marked[] = [];
  for (let index = 0; index < pieces.length; ) {
    const piece = pieces[index] as Piece;
    const entry = lexicon
      .get(piece.text)
      ?.find(({ words: parts }) => parts.every((part, step) => pieces[index + step]?.text === part));
    const mark = entry?.mark ?? plainMark(piece);
    // `1/8th`: the ending belongs to the fraction and says nothing more.
    const ending = mark.role === 'fractionEnding' && marked.at(-1)?.role === 'ratio';
    if (!ending) marked.push(mark);
    index += entry?.words.length ?? 1;
  }
  return marked;
}

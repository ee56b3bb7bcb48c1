import type { Words } from '../../flow/schema/words.ts';
import { ENGLISH_NUMBER_WORDS, type NumberWords, type UnitId } from '../../quantities/index.ts';

const cache = new WeakMap<Words, NumberWords>();

/** Every phrase that has a part to play already: what a words file adds must not take it over. */
function takenPhrases(base: NumberWords): Set<string> {
  const { units, numbers, multipliers, fractions, vague, ...lists } = base;
  const keyed = [numbers, multipliers, fractions, vague].flatMap((table) => Object.keys(table));
  return new Set([...keyed, ...Object.values(units).flat(), ...Object.values(lists).flat()]);
}

function merge(words: Words): NumberWords {
  const base = ENGLISH_NUMBER_WORDS;
  const taken = takenPhrases(base);
  const added = (phrases: readonly string[]) => phrases.filter((phrase) => !taken.has(phrase));
  const numbers = Object.fromEntries(Object.entries(words.numbers).filter(([word]) => !taken.has(word)));
  const units = Object.entries(base.units).map(([unit, phrases]) => [
    unit,
    [...phrases, ...added(words.units[unit] ?? [])],
  ]);
  return {
    ...base,
    numbers: { ...base.numbers, ...numbers },
    units: Object.fromEntries(units) as Readonly<Partial<Record<UnitId, readonly string[]>>>,
    about: [...base.about, ...added(words.about)],
    lessThan: [...base.lessThan, ...added(words.lessThan)],
    moreThan: [...base.moreThan, ...added(words.moreThan)],
    between: [...base.between, ...added(words.between)],
  };
}

/** The number words of a language: those the quantities know, and what the words file adds to them. */
export function numberWordsOf(words: Words): NumberWords {
  const found = cache.get(words) ?? merge(words);
  cache.set(words, found);
  return found;
}

const SMALL = 'zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve'.split('|');
/** Small numbers in words, with which options are picked. */
export const numberWords: ReadonlyMap<string, number> = new Map(SMALL.map((word, value) => [word, value]));

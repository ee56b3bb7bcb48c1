import { isParting, isQuiet, type Mark, type Role } from './mark.ts';
import { type NoValue, noValue } from './value-reading.ts';

const PLACES: ReadonlySet<Role> = new Set(['number', 'ordinal', 'letter']);

/** The place from 0 that a number, letter or "the last one" stands for. */
function placeOf(mark: Mark, count: number): number {
  const value = mark.value ?? Number.NaN;
  return value === -1 && mark.role === 'ordinal' ? count - 1 : value - 1;
}

/** Whether a message names places in a list and nothing else: "2", "b", "1 and 3", "the second one". */
export function namesPlaces(marks: readonly Mark[]): boolean {
  const meaning = marks.filter((mark) => !isParting(mark) && !isQuiet(mark));
  return meaning.length > 0 && meaning.every((mark) => PLACES.has(mark.role));
}

/** Reads places in a list of so many, ranges included, in the order named; each once. */
export function readPlaces(marks: readonly Mark[], count: number): readonly number[] | NoValue {
  const places: number[] = [];
  let from: number | undefined;
  let range = false;
  const relevant = marks.filter(
    (mark) => PLACES.has(mark.role) || mark.role === 'to' || mark.role === 'comma',
  );
  // "the first one": the number word after an ordinal only stands for the thing.
  const ordinal = relevant.some((mark) => mark.role === 'ordinal');
  for (const mark of relevant) {
    if (mark.role === 'to') range = from !== undefined;
    if (!PLACES.has(mark.role) || (ordinal && mark.text === 'one')) continue;
    const place = placeOf(mark, count);
    if (!Number.isInteger(place) || place < 0 || place >= count)
      return noValue({ code: 'noSuchNumber', number: mark.value ?? 0, last: count });
    if (range && from !== undefined && place > from)
      for (let between = from + 1; between < place; between += 1) places.push(between);
    places.push(place);
    from = place;
    range = false;
  }
  return [...new Set(places)];
}

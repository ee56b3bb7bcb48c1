import { type Mark, meaningOf, type Role } from './mark.ts';
import { namesPlaces, readPlaces } from './pick-by-place.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { stemsOf } from './tokens.ts';
import { howKnown, noValue, type ValueReading } from './value-reading.ts';
import { wordings } from './wordings.ts';

const YES: ReadonlySet<Role> = new Set(['yes', 'guessYes']);
const NO: ReadonlySet<Role> = new Set(['no', 'guessNo', 'none']);
const SOFT_YES: ReadonlySet<Role> = new Set(['echoYes', 'all']);
const SOFT_NO: ReadonlySet<Role> = new Set(['echoNo', 'negator']);
const asked = new WeakMap<PreparedQuestion, ReadonlySet<string>>();

/** The words of the question as asked: "no vents" answers a question about vents, "no damage" may not. */
function askedWords(prepared: PreparedQuestion): ReadonlySet<string> {
  const { ask, good, role } = prepared.question;
  const texts = role === 'danger' ? [ask, good, 'danger'] : [ask];
  const found = asked.get(prepared) ?? new Set(texts.flatMap(wordings).flatMap(stemsOf));
  asked.set(prepared, found);
  return found;
}

/** How many words are neither understood nor part of the question as asked. */
export function foreignWords(marks: readonly Mark[], prepared: PreparedQuestion): number {
  const known = askedWords(prepared);
  return marks.filter((mark) => mark.role === 'word' && !stemsOf(mark.text).some((stem) => known.has(stem)))
    .length;
}

type Side = 'yes' | 'no' | 'both' | undefined;

function sideOf(meaning: readonly Mark[], yes: ReadonlySet<Role>, no: ReadonlySet<Role>): Side {
  const saysYes = meaning.some((mark) => yes.has(mark.role));
  const saysNo = meaning.some((mark) => no.has(mark.role));
  if (saysYes && saysNo) return 'both';
  return saysYes ? 'yes' : saysNo ? 'no' : undefined;
}

/** An outright yes or no stands first or last, or alone; in the middle of other words it may deny anything. */
function standsClear(meaning: readonly Mark[], marks: readonly Mark[], prepared: PreparedQuestion): boolean {
  const outright = (mark: Mark | undefined) =>
    mark !== undefined && (YES.has(mark.role) || NO.has(mark.role));
  if (meaning.every((mark) => mark.role !== 'word')) return true;
  const first = meaning[0];
  if (!outright(first)) return outright(meaning.at(-1));
  if (first?.text !== 'no') return true;
  const follower = marks[marks.indexOf(first) + 1];
  return follower?.role !== 'word' || stemsOf(follower.text).some((stem) => askedWords(prepared).has(stem));
}

function answer(side: 'yes' | 'no', marks: readonly Mark[], strict: boolean): ValueReading {
  const misspelt = marks.some((mark) => mark.misspelt);
  return {
    kind: 'value',
    answer: { status: 'given', value: side, ...howKnown(marks) },
    strict,
    ...(misspelt ? { note: { guessed: 'from misspelling' as const } } : {}),
  };
}

function softAnswer(
  meaning: readonly Mark[],
  marks: readonly Mark[],
  prepared: PreparedQuestion,
): ValueReading {
  const words = meaning.filter((mark) => mark.role === 'word').length;
  const side = sideOf(meaning, SOFT_YES, SOFT_NO);
  const leads = meaning[0] !== undefined && (SOFT_YES.has(meaning[0].role) || SOFT_NO.has(meaning[0].role));
  if (side === 'both') return noValue({ code: 'ambiguous' }, ['yes', 'no']);
  if (side === undefined || !leads || foreignWords(meaning, prepared) > 0)
    return noValue({ code: 'noMatch' });
  return answer(side, marks, words === 0);
}

/** Reads yes or no as people say it; `yes` and `no` are the values. */
export function readYesNo(marks: readonly Mark[], prepared: PreparedQuestion): ValueReading {
  if (namesPlaces(marks)) return byPlace(marks);
  const meaning = meaningOf(marks).filter((mark) => mark.role !== 'letter' && mark.role !== 'number');
  const side = sideOf(meaning, YES, NO);
  if (side === 'both') {
    // "Yes, I think so" and "no, probably not" agree; a guess beside an outright word does not count against it.
    const plain = sideOf(meaning, new Set(['yes']), new Set(['no', 'none']));
    return plain === 'yes' || plain === 'no'
      ? answer(plain, marks, true)
      : noValue({ code: 'ambiguous' }, ['yes', 'no']);
  }
  if (side === undefined) return softAnswer(meaning, marks, prepared);
  // "I can not see": what begins as a yes is denied by the next word.
  if (marks.some((mark, at) => mark.role === 'yes' && SOFT_NO.has(marks[at + 1]?.role ?? 'filler')))
    return noValue({ code: 'noMatch' }, ['yes', 'no']);
  const doubted = meaning.some((mark) => mark.role === 'notSure');
  const words = meaning.some((mark) => mark.role === 'word');
  if (doubted && words) return { kind: 'value', answer: { status: 'notSure' }, strict: false };
  return standsClear(meaning, marks, prepared)
    ? answer(side, marks, !words)
    : noValue({ code: 'noMatch' }, ['yes', 'no']);
}

function byPlace(marks: readonly Mark[]): ValueReading {
  const [first] = meaningOf(marks);
  if (first?.role === 'number' && (first.value === 0 || !/^\d/.test(first.text)))
    return answer(first.value === 0 ? 'no' : 'yes', marks, true);
  const places = readPlaces(marks, 2);
  if (!Array.isArray(places)) return places as ValueReading;
  if (places.length !== 1) return noValue({ code: 'oneOnly' }, ['yes', 'no']);
  return answer(places[0] === 0 ? 'yes' : 'no', marks, true);
}

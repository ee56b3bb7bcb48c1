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

const unclear = (code: 'ambiguous' | 'noMatch') => noValue({ code }, ['yes', 'no']);

/** "I can but my wife can't", "yes but not at night", "yes if it is dry": no plain answer. */
function holdsOnTerms(marks: readonly Mark[]): boolean {
  if (marks.some((mark) => mark.role === 'terms')) return true;
  const at = marks.findIndex((mark) => mark.role === 'except');
  if (at < 0) return false;
  const before = meaningOf(marks.slice(0, at));
  const after = meaningOf(marks.slice(at + 1)).filter((mark) => mark.role !== 'notSure');
  if (before.some((mark) => mark.role === 'all')) return true;
  const saysNo = before.some((mark) => NO.has(mark.role) || SOFT_NO.has(mark.role));
  const saysYes = (mark: Mark) => YES.has(mark.role) || SOFT_YES.has(mark.role) || mark.role === 'option';
  const answers = saysNo || before.some(saysYes);
  const agrees = (mark: Mark) => !saysNo && (mark.role === 'number' || SOFT_YES.has(mark.role));
  return answers && !after.every((mark) => (saysNo ? saysTheSame(mark) : agrees(mark) || YES.has(mark.role)));
}

const saysTheSame = (mark: Mark): boolean => NO.has(mark.role) || SOFT_NO.has(mark.role);

/** A plain word that is denied, or a denial with an amount beside it: "yes, there aren't any", "no, a few". */
function contradicts(side: 'yes' | 'no', meaning: readonly Mark[]): boolean {
  if (side === 'yes') return meaning.some((mark) => SOFT_NO.has(mark.role));
  return meaning.some((mark, at) => mark.role === 'echoYes' && !SOFT_NO.has(meaning[at - 1]?.role ?? 'word'));
}

/** "Most likely no" is a no; "no, I think so" and "yes, I doubt it" are neither. */
function readBoth(meaning: readonly Mark[], marks: readonly Mark[]): ValueReading {
  const plain = sideOf(meaning, new Set(['yes']), new Set(['no', 'none']));
  const turned = meaning.some(
    (mark) =>
      (plain === 'yes' && mark.role === 'guessNo') ||
      (plain === 'no' && mark.role === 'guessYes' && /\b(?:so|it)$/.test(mark.text)),
  );
  return (plain === 'yes' || plain === 'no') && !turned ? answer(plain, marks, true) : unclear('ambiguous');
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

/** What the flow's own words for this question say: "buried" is a no where overhead wires are asked about. */
function ownSide(marks: readonly Mark[]): Side | 'denied' {
  const own = marks.filter((mark) => mark.role === 'option');
  const denied = own.some((mark) => {
    const before = marks.slice(0, marks.indexOf(mark));
    // "No poles" denies them; "no, they're buried" does not.
    const loud = before.findLast((one) => one.role !== 'filler');
    return before.at(-1)?.text === 'no' || (loud !== undefined && SOFT_NO.has(loud.role));
  });
  if (denied) return 'denied';
  const sides = new Set(own.flatMap((mark) => mark.ids ?? []));
  return sides.size > 1 ? 'both' : sides.has('yes') ? 'yes' : sides.has('no') ? 'no' : undefined;
}

function readOwn(
  own: Exclude<ReturnType<typeof ownSide>, undefined>,
  meaning: readonly Mark[],
  marks: readonly Mark[],
): ValueReading {
  // "They are buried" is no yes, "some are buried" is no plain no.
  const amounts = meaning.filter(
    (mark) => mark.role !== 'echoYes' || !/^(?:it|they|there|i|we) /.test(mark.text),
  );
  const said = sideOf(amounts, new Set([...YES, 'echoYes']), new Set([...NO, ...SOFT_NO]));
  if (own === 'both' || own === 'denied' || (said !== undefined && said !== own)) return unclear('ambiguous');
  return answer(
    own,
    marks,
    meaning.every((mark) => mark.role !== 'word'),
  );
}

/** Reads yes or no as people say it; `yes` and `no` are the values. */
export function readYesNo(marks: readonly Mark[], prepared: PreparedQuestion): ValueReading {
  if (namesPlaces(marks)) return prepared.sideful ? byAmount(marks) : byPlace(marks);
  // Where danger is asked about, a yes is a yes, whatever is said beside it.
  const alarm = prepared.question.role === 'danger' && sideOf(marks, new Set(['yes']), NO) === 'yes';
  if (alarm) return answer('yes', marks, true);
  if (holdsOnTerms(marks)) return unclear('noMatch');
  const meaning = meaningOf(marks).filter((mark) => mark.role !== 'letter' && mark.role !== 'number');
  const own = ownSide(marks);
  if (own !== undefined) return readOwn(own, meaning, marks);
  const side = sideOf(meaning, YES, NO);
  if (side === 'both') return readBoth(meaning, marks);
  if (side === undefined) return softAnswer(meaning, marks, prepared);
  if (contradicts(side, meaning)) return unclear(side === 'yes' ? 'noMatch' : 'ambiguous');
  const doubted = meaning.some((mark) => mark.role === 'notSure');
  const words = meaning.some((mark) => mark.role === 'word');
  if (doubted && words) return { kind: 'value', answer: { status: 'notSure' }, strict: false };
  return standsClear(meaning, marks, prepared) ? answer(side, marks, !words) : unclear('noMatch');
}

/** "2 at the back": beside a side a number says how many there are. */
function byAmount(marks: readonly Mark[]): ValueReading {
  const amounts = meaningOf(marks).map((mark) => (mark.role === 'number' ? mark.value : 1));
  return answer(amounts.every((amount) => amount === 0) ? 'no' : 'yes', marks, true);
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

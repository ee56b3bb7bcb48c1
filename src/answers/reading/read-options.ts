import { isQuiet, type Mark, meaningOf } from './mark.ts';
import { namesPlaces, readPlaces } from './pick-by-place.ts';
import { type PickedPart, pickPart, splitParts } from './pick-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { howKnown, type NoValue, noValue, type ValueReading } from './value-reading.ts';

interface Picked {
  readonly ids: readonly string[];
  readonly strict: boolean;
}

function pickParts(marks: readonly Mark[], prepared: PreparedQuestion): readonly PickedPart[] {
  let denied = false;
  return splitParts(marks)
    .filter((part) => !part.every(isQuiet))
    .map((part) => {
      const picked = pickPart(part, prepared, denied);
      denied = picked.denied.length > 0;
      return picked;
    });
}

const unique = (ids: readonly string[]): readonly string[] => [...new Set(ids)];
const optionIds = (prepared: PreparedQuestion): readonly string[] => prepared.options.map((one) => one.id);
const together = (prepared: PreparedQuestion): readonly string[] =>
  prepared.options.filter((option) => !option.alone && option.id !== prepared.noneId).map((one) => one.id);

/** Nothing was named outright: "none", what is left of two when one is denied, or a problem. */
function withoutNames(parts: readonly PickedPart[], prepared: PreparedQuestion): Picked | NoValue {
  const strict = parts.every((part) => part.unknown === 0);
  const denied = unique(parts.flatMap((part) => part.denied));
  if (denied.length > 0) {
    const left = optionIds(prepared).filter((id) => !denied.includes(id));
    return left.length === 1 && prepared.options.length === 2
      ? { ids: left, strict }
      : noValue({ code: 'onlyNegated' }, left);
  }
  const open = unique(parts.flatMap((part) => part.open));
  if (open.length > 0) return noValue({ code: open.length > 1 ? 'ambiguous' : 'noMatch' }, open);
  if (parts.some((part) => part.none) && prepared.noneId !== undefined && parts.every((p) => p.unknown <= 3))
    return { ids: [prepared.noneId], strict };
  return noValue({ code: 'noMatch' });
}

const namesAny = (marks: readonly Mark[]): boolean =>
  marks.some((mark) => mark.role === 'option' || mark.role === 'hint');
/** "But" often only adds something; the others take something away. */
const takesAway = (except: Mark | undefined): boolean => except?.text.startsWith('but') === false;

/** "Anything but wood" denies it, "all tight except one" is neither tight nor loose; undefined when it decides nothing. */
function exceptionToOne(marks: readonly Mark[], prepared: PreparedQuestion): NoValue | undefined {
  const at = marks.findIndex((mark) => mark.role === 'except');
  if (at < 0) return undefined;
  const [before, after] = [marks.slice(0, at), marks.slice(at + 1)];
  const named = unique(marks.flatMap((mark) => (mark.role === 'option' ? (mark.ids ?? []) : [])));
  if (namesAny(before))
    return takesAway(marks[at]) && meaningOf(after).length > 0
      ? noValue({ code: 'noMatch' }, named)
      : undefined;
  const whole = before.some(({ role, text }) => role === 'all' || role === 'allSides' || text === 'anything');
  if (!namesAny(after) || !(whole || (takesAway(marks[at]) && meaningOf(before).length === 0)))
    return undefined;
  const left = optionIds(prepared).filter((id) => !named.includes(id));
  return noValue({ code: 'onlyNegated' }, left);
}

function chooseOne(marks: readonly Mark[], prepared: PreparedQuestion): Picked | NoValue {
  const exception = exceptionToOne(marks, prepared);
  if (exception !== undefined) return exception;
  const parts = pickParts(marks, prepared);
  const firm = parts.filter((part) => !part.loose && part.ids.length > 0);
  const counted = firm.length > 0 ? firm : parts;
  const ids = unique(counted.flatMap((part) => part.ids));
  const strict = parts.every((part) => part.unknown === 0 && !part.loose && part.open.length === 0);
  if (ids.length === 1) return { ids, strict };
  if (ids.length === 0) return withoutNames(parts, prepared);
  return noValue({ code: parts.some((part) => part.either) ? 'ambiguous' : 'oneOnly' }, ids);
}

/** "Chimney yes, skylights no": each named with its own yes or no. */
function oneByOne(marks: readonly Mark[], prepared: PreparedQuestion): Picked | undefined {
  const meaning = meaningOf(marks);
  if (meaning.length < 4 || meaning.length % 2 === 1) return undefined;
  const yes: string[] = [];
  for (let at = 0; at < meaning.length; at += 2) {
    const [named, said] = [meaning[at], meaning[at + 1]];
    const [id, ...more] = named?.role === 'option' ? (named.ids ?? []) : [];
    if (id === undefined || more.length > 0 || (said?.role !== 'yes' && said?.text !== 'no'))
      return undefined;
    if (said.role === 'yes') yes.push(id);
  }
  return yes.length > 0
    ? { ids: optionIds(prepared).filter((id) => yes.includes(id)), strict: true }
    : undefined;
}

function chooseSeveral(marks: readonly Mark[], prepared: PreparedQuestion): Picked | NoValue {
  const told = oneByOne(marks, prepared);
  if (told !== undefined) return told;
  const parts = pickParts(marks, prepared);
  const ids = unique(parts.flatMap((part) => part.ids));
  const strict = parts.every((part) => part.unknown === 0 && !part.loose);
  if (ids.length === 0) {
    const everything = together(prepared);
    const both = marks.some((mark) => mark.text === 'both') && everything.length !== 2;
    const denied = parts.some((part) => part.denied.length + part.unknown > 0);
    if (parts.some((part) => part.all) && !both && !denied) return { ids: everything, strict };
    return withoutNames(parts, prepared);
  }
  const open = unique(parts.flatMap((part) => (part.ids.length === 0 ? part.open : [])));
  if (open.length > 0) return noValue({ code: 'ambiguous' }, [...ids, ...open]);
  const lost = parts.some((part) => part.ids.length + part.denied.length === 0 && part.unknown > 0);
  if (lost) return noValue({ code: 'noMatch' }, ids);
  if (parts.some((part) => part.either) && ids.length > 1) return noValue({ code: 'ambiguous' }, ids);
  const alone = prepared.options.filter((option) => option.alone && ids.includes(option.id));
  if (alone.length > 0 && ids.length > 1) return noValue({ code: 'standsAlone' }, ids);
  return { ids: optionIds(prepared).filter((id) => ids.includes(id)), strict };
}

function byPlace(marks: readonly Mark[], prepared: PreparedQuestion, many: boolean): Picked | NoValue {
  const places = readPlaces(marks, prepared.options.length);
  // "Eight by ten" and "T1-11" name no place in a list.
  const listed = marks.every((mark) => mark.role !== 'number' || /^-?\d/.test(mark.text));
  const mixed = marks.some((mark) => mark.role === 'letter') && marks.some((mark) => mark.role === 'number');
  if ('kind' in places) return listed && !mixed ? places : noValue({ code: 'noMatch' });
  const ids = places.flatMap((place) => prepared.options[place]?.id ?? []);
  if (!many && ids.length > 1) return noValue({ code: 'oneOnly' }, ids);
  const alone = prepared.options.some((option) => option.alone && ids.includes(option.id));
  if (alone && ids.length > 1) return noValue({ code: 'standsAlone' }, ids);
  return { ids: optionIds(prepared).filter((id) => ids.includes(id)), strict: true };
}

function choose(marks: readonly Mark[], prepared: PreparedQuestion, many: boolean): Picked | NoValue {
  if (namesPlaces(marks)) return byPlace(marks, prepared, many);
  return many ? chooseSeveral(marks, prepared) : chooseOne(marks, prepared);
}

const COMMA: Mark = { role: 'comma', text: ',', start: 0, end: 0 };

/** "All except the panels", "nothing but leaves": what stands before the word, less or only what follows it. */
function withExcept(
  before: readonly Mark[],
  after: readonly Mark[],
  prepared: PreparedQuestion,
): Picked | NoValue {
  const left = splitParts(before).map((part) => pickPart(part, prepared, false));
  // "All but 2" is one phrase, and so is a mere "except 2": all are meant.
  const whole =
    left.some((part) => part.all) ||
    left.every((part) => part.unknown === 0 && part.ids.length === 0 && part.denied.length === 0);
  const none = (part: PickedPart) => part.ids.length > 0 && part.ids.every((id) => id === prepared.noneId);
  const only = left.some((part) => part.none || none(part));
  const named = left.some((part) => part.ids.length > 0 && !none(part));
  if (named || !(whole || only)) {
    const both = chooseSeveral(before, prepared);
    return 'kind' in both ? chooseSeveral([...before, COMMA, ...after], prepared) : both;
  }
  const out = choose(after, prepared, true);
  if ('kind' in out) return out;
  if (!whole || only) return out;
  const ids = together(prepared).filter((id) => !out.ids.includes(id));
  return ids.length === 0 ? noValue({ code: 'noMatch' }) : { ids, strict: out.strict };
}

/** Reads an option, or several for `many`, from the marks of a message or of a part of it. */
export function readOptions(marks: readonly Mark[], prepared: PreparedQuestion, many: boolean): ValueReading {
  const at = many ? marks.findIndex((mark) => mark.role === 'except') : -1;
  const picked =
    at < 0 ? choose(marks, prepared, many) : withExcept(marks.slice(0, at), marks.slice(at + 1), prepared);
  if ('kind' in picked) return picked;
  const value = many ? picked.ids : (picked.ids[0] ?? '');
  const misspelt = marks.some((mark) => mark.misspelt);
  return {
    kind: 'value',
    answer: { status: 'given', value, ...howKnown(marks) },
    strict: picked.strict,
    ...(misspelt ? { note: { guessed: 'from misspelling' as const } } : {}),
  };
}

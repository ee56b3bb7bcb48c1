import { absentIn, DENYING, deniesNext, deniesStranger } from './denials.ts';
import { isParting, isQuiet, type Mark, type Role } from './mark.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { stemsOf } from './tokens.ts';

/** One part of an answer between commas and joining words, resolved to options. */
export interface PickedPart {
  readonly ids: readonly string[];
  readonly denied: readonly string[];
  /** More than one option fits it equally well. */
  readonly open: readonly string[];
  /** Found in the words of labels, not as a whole phrase. */
  readonly loose: boolean;
  /** Words that mean nothing here. */
  readonly unknown: number;
  readonly none: boolean;
  readonly all: boolean;
  readonly either: boolean;
}

const WORDLESS: ReadonlySet<Role> = new Set(['letter', 'echoYes', 'guessYes', 'notSure', 'yes']);

/** Splits marks at commas and joining words. */
export function splitParts(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  const parts: Mark[][] = [];
  let part: Mark[] = [];
  for (const mark of marks) {
    if (!isParting(mark)) {
      part.push(mark);
      continue;
    }
    if (part.length > 0) parts.push(part);
    part = mark.role === 'or' ? [mark] : [];
  }
  if (part.length > 0) parts.push(part);
  return parts;
}

const meet = (lists: readonly (readonly string[])[]): readonly string[] =>
  lists.reduce((common, list) => common.filter((id) => list.includes(id)));

/** The options in whose words most of the hints stand; all of them when they are equal. */
function bestOf(hints: readonly Mark[]): readonly string[] {
  const score = new Map<string, number>();
  for (const hint of hints) for (const id of hint.ids ?? []) score.set(id, (score.get(id) ?? 0) + 1);
  const most = Math.max(0, ...score.values());
  return [...score].filter(([, count]) => count === most).map(([id]) => id);
}

/** "Cedar shingles": two phrases of different options, side by side, are the one option that holds both. */
function compound(named: readonly Mark[], prepared: PreparedQuestion): string | undefined {
  const stems = named.flatMap((mark) => stemsOf(mark.text));
  const lists = stems.flatMap((stem) => {
    const ids = prepared.hints.get(stem);
    return ids === undefined ? [] : [ids];
  });
  const common = lists.length > 1 ? meet(lists) : [];
  return common.length === 1 ? common[0] : undefined;
}

/** Whole phrases first; where one fits several options, the other words of the part decide. */
function settle(
  named: readonly Mark[],
  hints: readonly Mark[],
  many: boolean,
): { ids: string[]; open: string[] } {
  // "Covered porch" where several may be picked: what is given for two options is both of them.
  if (many) return { ids: [...new Set(named.flatMap((mark) => mark.ids ?? []))], open: [] };
  const ids = new Set(named.filter((mark) => mark.ids?.length === 1).flatMap((mark) => mark.ids ?? []));
  const open = new Set<string>();
  for (const mark of named) {
    const several = mark.ids ?? [];
    if (several.length < 2 || several.some((id) => ids.has(id))) continue;
    const others = [...named, ...hints].filter((other) => other !== mark && (other.ids?.length ?? 0) > 0);
    const common = others.length === 0 ? several : meet([several, ...others.map((other) => other.ids ?? [])]);
    if (common.length === 1) ids.add(common[0] as string);
    else for (const id of several) open.add(id);
  }
  return { ids: [...ids], open: ids.size > 0 ? [] : [...open] };
}

interface Sorted {
  readonly named: Mark[];
  readonly hints: Mark[];
  readonly denied: Mark[];
  /** What is said not to be there, with the options that say the same: "not any gutters". */
  readonly missing: Mark[];
  unknown: number;
}

function sortMarks(part: readonly Mark[], prepared: PreparedQuestion, deniedBefore: boolean): Sorted {
  const sorted: Sorted = { named: [], hints: [], denied: [], missing: [], unknown: 0 };
  let denies = deniedBefore;
  for (const [index, mark] of part.entries()) {
    // "The metal one": here the word is no number.
    if (isParting(mark) || (mark.role === 'number' && mark.text === 'one')) continue;
    const absent = absentIn(mark, prepared);
    const denying = deniesNext(mark, part, index, prepared);
    if (absent !== undefined) {
      // "We have gutters" is not "no gutters", though the word stands in no other option.
      if (denies) sorted.missing.push({ ...mark, ids: absent });
      else sorted.unknown += 1;
    } else if (mark.role === 'no' || mark.role === 'none' || denying) denies = denying;
    else if (deniesStranger(mark, part[index + 1], prepared)) denies = true;
    else if (DENYING.has(mark.role)) denies = true;
    else if (mark.role === 'option' || mark.role === 'hint') {
      // "No chimney just vents": the words of an option may begin anew too.
      if (sorted.denied.length > 0 && /^(?:just|only) /.test(mark.text)) denies = false;
      const list = denies ? sorted.denied : mark.role === 'option' ? sorted.named : sorted.hints;
      list.push(mark);
    } else if (isQuiet(mark) && sorted.denied.length > 0) {
      // "No chimney, just panels" without its comma: what is denied ends here.
      denies = false;
    } else if (mark.role === 'word' || mark.role === 'number' || mark.role === 'ordinal') sorted.unknown += 1;
    else if (!isQuiet(mark) && !WORDLESS.has(mark.role)) denies = false;
  }
  return sorted;
}

const nothingPicked: PickedPart = {
  ids: [],
  denied: [],
  open: [],
  loose: false,
  unknown: 0,
  none: false,
  all: false,
  either: false,
};

/** "Panels and 2": a number in figures that stands for itself picks an option beside named ones. */
function placeIn(part: readonly Mark[], prepared: PreparedQuestion): string | undefined {
  const [only] = part;
  const isPlace = part.length === 1 && only?.role === 'number' && /^\d+$/.test(only.text);
  return isPlace ? prepared.options[(only.value ?? 0) - 1]?.id : undefined;
}

/** Resolves one part. `deniedBefore` carries a "not" over from the part before: "not wood or metal". */
export function pickPart(
  part: readonly Mark[],
  prepared: PreparedQuestion,
  deniedBefore: boolean,
): PickedPart {
  const either = part[0]?.role === 'or';
  const place = placeIn(part, prepared);
  if (place !== undefined) return { ...nothingPicked, ids: [place] };
  const { named, hints, denied, missing, unknown } = sortMarks(part, prepared, deniedBefore && either);
  const settled = settle(named, hints, prepared.question.kind === 'several');
  const one = settled.ids.length > 1 ? compound(named, prepared) : undefined;
  const has = (...roles: Role[]) => part.some((mark) => roles.includes(mark.role));
  const nothing = named.length + hints.length + denied.length === 0;
  const denies = unknown === 0 && has('negator', 'echoNo', 'guessNo');
  const saysNone =
    (has('none', 'no') && !part.some((mark, at) => deniesStranger(mark, part[at + 1], prepared))) || denies;
  const shared = {
    denied: denied.flatMap((mark) => (mark.ids?.length === 1 ? mark.ids : [])),
    none: nothing && saysNone && prepared.noneId !== undefined,
    all: has('all', 'allSides'),
    either,
  };
  if (nothing && missing.length > unknown) {
    const best = bestOf(missing);
    return best.length === 1
      ? { ids: best, open: [], ...shared, loose: true, unknown }
      : { ids: [], open: best, ...shared, loose: true, unknown };
  }
  if (named.length > 0 || hints.length === 0) {
    // A word of a label that is not one of the options named is left over.
    const stray = hints.filter((hint) => !hint.ids?.some((id) => settled.ids.includes(id))).length;
    const ids = one === undefined ? settled.ids : [one];
    return { ...settled, ids, ...shared, loose: false, unknown: unknown + stray };
  }
  const best = bestOf(hints);
  const enough = hints.length > unknown;
  const found = enough && best.length === 1 ? best : [];
  return { ids: found, open: found.length > 0 ? [] : best, ...shared, loose: true, unknown };
}

import type { Side } from '../../flow/schema/base.ts';
import { isParting, isQuiet, type Mark } from './mark.ts';
import { measuredKinds } from './prepare-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import type { Part } from './read-value.ts';

/** Named sides, all of them, or those that are not named elsewhere. */
export interface SideSelection {
  readonly sides: readonly Side[];
  readonly all: boolean;
  readonly rest: boolean;
}

/** A piece of an answer by side. */
export type SideItem =
  | { readonly type: 'sides'; readonly selection: SideSelection }
  | { readonly type: 'value'; readonly part: Part }
  | { readonly type: 'except' }
  | { readonly type: 'break'; readonly firm: boolean };

function selectionOf(mark: Mark, numbered: readonly Side[]): SideSelection | undefined {
  const none = { sides: [], all: false, rest: false };
  if (mark.role === 'allSides' || mark.role === 'all') return { ...none, all: true };
  if (mark.role === 'rest') return { ...none, rest: true };
  if (mark.role === 'sides') return { ...none, sides: mark.sides ?? [] };
  if (mark.role !== 'number' && mark.role !== 'ordinal') return undefined;
  const side = numbered[(mark.value ?? 0) - 1];
  return side === undefined ? undefined : { ...none, sides: [side] };
}

/** The sides that numbers stand for: only where sides alone are wanted, and none is named in words. */
function numberedSides(
  marks: readonly Mark[],
  prepared: PreparedQuestion,
  asked: readonly Side[],
): readonly Side[] {
  const { kind } = prepared.question;
  if (kind !== 'yesNo' && kind !== 'sides') return [];
  // "3 on each side" counts things; "all but 3" names a side.
  const counted =
    marks.some((mark) => mark.role === 'allSides') && !marks.some((mark) => mark.role === 'except');
  return counted || marks.some((mark) => mark.role === 'sides' || mark.role === 'word') ? [] : asked;
}

/** "Both front and back": beside named sides the word adds nothing; alone it needs two sides. */
function keepsBoth(mark: Mark, marks: readonly Mark[], asked: readonly Side[]): boolean {
  if (mark.text !== 'both' || mark.role !== 'allSides') return true;
  return asked.length === 2 && !marks.some((one) => one.role === 'sides');
}

/** The sides of both selections; "all of the front" is the front. */
export function joinSelections(first: SideSelection, second: SideSelection): SideSelection {
  const sides = [...new Set([...first.sides, ...second.sides])];
  return {
    sides,
    all: sides.length === 0 && (first.all || second.all),
    rest: first.rest || second.rest,
  };
}

const LOOSE_ENDS = new Set('on at in for along around by of to the is are'.split(' '));

/** "12 feet on | both sides": what only leads on to the sides is no part of the value. */
function isLooseEnd(marks: readonly Mark[], at: number, lower: string): boolean {
  const mark = marks[at] as Mark;
  // "6 in all round" are inches, "10 in the front" are not.
  const inches =
    mark.text === 'in' &&
    marks[at - 1]?.role !== 'filler' &&
    !/^ (?:the|my|our) /.test(lower.slice(mark.end));
  return isParting(mark) || (mark.role === 'filler' && LOOSE_ENDS.has(mark.text) && !inches);
}

function valuePart(marks: readonly Mark[], lower: string): Part | undefined {
  let from = 0;
  let to = marks.length;
  while (from < to && isParting(marks[from] as Mark) && marks[from]?.role !== 'to') from += 1;
  while (to > from && isLooseEnd(marks, to - 1, lower)) to -= 1;
  const kept = marks.slice(from, to);
  const first = kept[0];
  const last = kept.at(-1);
  if (first === undefined || last === undefined || kept.every(isQuiet)) return undefined;
  // Signs such as `~` and `"` are no marks of their own: they belong to the number they touch.
  const before = /[~≈<>#]\s*$/.exec(lower.slice(0, first.start))?.[0].length ?? 0;
  const after = /^["'%°]+/.exec(lower.slice(last.end))?.[0].length ?? 0;
  return { marks: kept, text: lower.slice(first.start - before, last.end + after) };
}

/** "1,200" and "2,5" are one number: such a comma parts nothing. */
function insideNumber(mark: Mark, lower: string): boolean {
  return (
    mark.role === 'comma' &&
    /\d$/.test(lower.slice(0, mark.start)) &&
    /^\d/.test(lower.slice(mark.end)) &&
    !/\d,\d+,$/.test(lower.slice(0, mark.end)) &&
    !/^\d+,\d/.test(lower.slice(mark.end))
  );
}

const EMPTY_YES: ReadonlySet<Mark['role']> = new Set(['yes', 'echoYes', 'guessYes']);
/** "All the same" is all; "yes, metal" is metal. */
function addsNothing(mark: Mark, at: number, marks: readonly Mark[], namingIsYes: boolean): boolean {
  const beside = [marks[at - 1], marks[at + 1]].some(
    (one) => one?.role === 'allSides' || one?.role === 'all',
  );
  return (mark.role === 'same' && beside) || (!namingIsYes && EMPTY_YES.has(mark.role));
}

type PartingUse = 'break' | 'except' | 'drop' | undefined;

/** What a mark that is no side does between values; undefined when it belongs to one. */
function partingUse(mark: Mark, first: boolean, isMeasure: boolean, lower: string): PartingUse {
  if (mark.role === 'except') return 'except';
  if (mark.role === 'stop') return 'break';
  if (mark.role === 'comma' && !(isMeasure && insideNumber(mark, lower))) return 'break';
  return first && (isParting(mark) || (mark.role === 'filler' && !isMeasure)) ? 'drop' : undefined;
}

/** Cuts the marks of an answer by side into sides, values and what stands between them. */
export function sideItems(
  marks: readonly Mark[],
  lower: string,
  prepared: PreparedQuestion,
  asked: readonly Side[],
): readonly SideItem[] {
  const items: SideItem[] = [];
  const { kind } = prepared.question;
  const namingIsYes = kind === 'yesNo' || kind === 'sides';
  const numbered = numberedSides(marks, prepared, asked);
  let run: Mark[] = [];
  const flush = () => {
    const part = run.length > 0 ? valuePart(run, lower) : undefined;
    if (part !== undefined) items.push({ type: 'value', part });
    run = [];
  };
  const addSides = (selection: SideSelection) => {
    const last = items.at(-1);
    flush();
    if (last?.type === 'sides' && last === items.at(-1) && last.selection.rest === selection.rest)
      items[items.length - 1] = { type: 'sides', selection: joinSelections(last.selection, selection) };
    else items.push({ type: 'sides', selection });
  };
  for (const [at, mark] of marks.entries()) {
    if (!keepsBoth(mark, marks, asked) || addsNothing(mark, at, marks, namingIsYes)) continue;
    const selection = selectionOf(mark, numbered);
    const use = partingUse(mark, run.length === 0, measuredKinds.has(kind), lower);
    if (selection !== undefined) addSides(selection);
    else if (use === 'break' || use === 'except') {
      flush();
      items.push(use === 'except' ? { type: 'except' } : { type: 'break', firm: mark.role === 'stop' });
    } else if (use === undefined) run.push(mark);
  }
  flush();
  return items;
}

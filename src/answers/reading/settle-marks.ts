import type { Side } from '../../flow/schema/base.ts';
import { type Mark, meaningOf } from './mark.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';

const pointing = new Set(ENGLISH_TALK_WORDS.pointing);
const lastWord = (mark: Mark | undefined): string => mark?.text.split(' ').at(-1) ?? '';

/** "The one at the back", "the left one": the word stands for the thing and counts nothing. */
function standsForThing(mark: Mark, before: Mark | undefined): boolean {
  if (mark.role !== 'number' || mark.text !== 'one') return false;
  return pointing.has(lastWord(before)) || before?.role === 'sides';
}

/** "Two sides" counts sides and names none. */
const countsSides = (mark: Mark, after: Mark | undefined): boolean =>
  mark.role === 'number' && mark.value !== 1 && after?.text === 'sides';

const names = (marks: readonly Mark[], ...wanted: readonly Side[]): boolean =>
  marks.some((mark) => wanted.some((side) => mark.sides?.includes(side)));

/** "Front brick, sides wood": beside the front or the back the bare word is left and right. */
function leftAndRight(mark: Mark, at: number, marks: readonly Mark[]): boolean {
  if (mark.role !== 'filler' || mark.text !== 'sides') return false;
  if (names(marks, 'left', 'right') || !names(marks, 'front', 'back')) return false;
  const beside = [marks[at - 1]?.role, marks[at + 1]?.role];
  return !beside.includes('sides') && marks[at - 1]?.role !== 'number';
}

const namesSides = (marks: readonly Mark[]): boolean => marks.some((mark) => mark.role === 'sides');

/** "And nothing else": none when it is all that is said, a no for the other sides, or no news. */
function settleNothingElse(mark: Mark, marks: readonly Mark[], namingIsYes: boolean): Mark[] {
  const others = meaningOf(marks).filter((one) => one.role !== 'nothingElse');
  if (others.length === 0) return [{ ...mark, role: 'none' }];
  if (!namingIsYes || !namesSides(others)) return [{ ...mark, role: 'filler' }];
  return [
    { ...mark, role: 'comma' },
    { ...mark, role: 'rest' },
    { ...mark, role: 'no' },
  ];
}

/** Settles what some words do by the words beside them; marks are otherwise left as they are. */
export function settleMarks(marks: readonly Mark[], prepared: PreparedQuestion): readonly Mark[] {
  const { kind, by } = prepared.question;
  const namingIsYes = (kind === 'yesNo' && by === 'side') || kind === 'sides';
  // Where things are counted, or asked after, "the one" says that there is one.
  const named = kind !== 'count' && (kind !== 'yesNo' || by === 'side');
  return marks.flatMap((mark, at): Mark[] => {
    if (mark.role === 'nothingElse') return settleNothingElse(mark, marks, namingIsYes);
    if (named && standsForThing(mark, marks[at - 1])) return [{ ...mark, role: 'filler' }];
    if (namingIsYes && countsSides(mark, marks[at + 1])) return [{ ...mark, role: 'filler' }];
    if (prepared.sideful && leftAndRight(mark, at, marks))
      return [{ ...mark, role: 'sides', sides: ['left', 'right'] }];
    return [mark];
  });
}

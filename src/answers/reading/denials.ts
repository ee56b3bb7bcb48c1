import type { Mark, Role } from './mark.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { stemsOf } from './tokens.ts';
import { wordings } from './wordings.ts';

/** Marks after which what is named is not so. */
export const DENYING: ReadonlySet<Role> = new Set(['negator', 'echoNo', 'guessNo']);
const trouble = new Set(ENGLISH_TALK_WORDS.trouble);

/** The options that say of this word that it is not there. */
export function absentIn(mark: Mark | undefined, prepared: PreparedQuestion): readonly string[] | undefined {
  if (mark === undefined || (mark.role !== 'hint' && mark.role !== 'word')) return undefined;
  const [stem] = stemsOf(mark.text);
  return stem === undefined ? undefined : prepared.absent.get(stem);
}

const LINKS = new Set(['is', 'are', 'was', 'were', 'of', 'of them', 'the']);
const isNamed = (mark: Mark | undefined): boolean => mark?.role === 'option' || mark?.role === 'hint';

/** "Nothing missing", "none are hollow": the word denies what follows it, and is no answer by itself. */
export function deniesNext(
  mark: Mark,
  part: readonly Mark[],
  at: number,
  prepared: PreparedQuestion,
): boolean {
  const next = part[at + 1];
  if (mark.text === 'no') {
    // "No one put up panels" denies them.
    if (next?.role === 'number' && next.text === 'one') return part.slice(at + 2).some(isNamed);
    // "No metal" denies it; "no it's metal" only answers something else first.
    return isNamed(next) || absentIn(next, prepared) !== undefined;
  }
  if (mark.role !== 'none' && !/^(?:nothing|none|nobody|no one)$/.test(mark.text)) return false;
  return isNamed(part.slice(at + 1).find((one) => !LINKS.has(one.text)));
}

/** "No propane" says none where it is asked whether there is any. */
function asksWhetherThereIs(stem: string, prepared: PreparedQuestion): boolean {
  return wordings(prepared.question.ask).some(
    (ask) => /^(?:is|are) there\b/i.test(ask) && stemsOf(ask).includes(stem),
  );
}

/** "No garage" where no option speaks of garages says nothing of the others. */
export function deniesStranger(mark: Mark, next: Mark | undefined, prepared: PreparedQuestion): boolean {
  if (mark.text !== 'no' || next?.role !== 'word' || trouble.has(next.text)) return false;
  return !stemsOf(next.text).some((stem) => asksWhetherThereIs(stem, prepared));
}

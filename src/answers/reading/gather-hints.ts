import { ENGLISH_TALK_WORDS } from './talk-words.ts';
import { stemsOf } from './tokens.ts';

const CLAUSE = /[,;:()]|\b(?:or|but|just|only)\b/;
const absences: ReadonlySet<string> = new Set(ENGLISH_TALK_WORDS.absences);

/** The words of some phrases, in stems: those of what is there, and those that only follow a "no" or "without". */
function splitByAbsence(phrases: readonly string[]): {
  readonly present: ReadonlySet<string>;
  readonly absent: ReadonlySet<string>;
} {
  const present = new Set<string>();
  const absent = new Set<string>();
  for (const clause of phrases.flatMap((phrase) => phrase.toLowerCase().split(CLAUSE))) {
    const stems = stemsOf(clause);
    const at = stems.findIndex((stem) => absences.has(stem));
    for (const [index, stem] of stems.entries()) (at >= 0 && index > at ? absent : present).add(stem);
  }
  return { present, absent: new Set([...absent].filter((stem) => !present.has(stem))) };
}

type Hints = Map<string, string[]>;

/**
 * The words of all options, in stems, each with the options in whose phrases it stands. What an option only says is
 * not there ("tank" in "no tank") goes apart, so that naming it is not taken for that option. Words in `common` are left out.
 */
export function gatherHints(
  options: readonly { readonly id: string; readonly phrases: readonly string[] }[],
  common: ReadonlySet<string>,
): { readonly hints: Hints; readonly absent: Hints } {
  const hints: Hints = new Map();
  const absent: Hints = new Map();
  for (const option of options) {
    const words = splitByAbsence(option.phrases);
    for (const stem of new Set([...words.present, ...words.absent])) {
      if (stem.length < 3 || common.has(stem) || stem.includes('/')) continue;
      const list = words.present.has(stem) ? hints : absent;
      list.set(stem, [...(list.get(stem) ?? []), option.id]);
    }
  }
  return { hints, absent };
}

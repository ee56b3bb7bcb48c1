import { meaningOf } from './mark.ts';
import { measuredKinds } from './prepare-options.ts';
import type { PreparedQuestion } from './prepare-question.ts';
import { type Part, readValue } from './read-value.ts';
import type { ReadingContext } from './reading.ts';
import type { ClauseRules } from './side-clauses.ts';

/** "None", "a pencil" and "not sure" are whole values: nothing is added to them. */
const standsAlone = ({ marks }: Part): boolean => {
  const [only, ...more] = meaningOf(marks);
  return more.length === 0 && only !== undefined && ['none', 'option', 'notSure'].includes(only.role);
};

/** How the kind of a question settles what can be read in two ways. */
export function rulesFor(prepared: PreparedQuestion, context: ReadingContext): ClauseRules {
  const { kind } = prepared.question;
  return {
    namingIsYes: kind === 'yesNo' || kind === 'sides',
    valuesAddUp: kind === 'several',
    joins: (first, second) =>
      measuredKinds.has(kind) &&
      ![first, second].some(standsAlone) &&
      readValue({ marks: [], text: `${first.text}, ${second.text}` }, prepared, context).kind === 'value',
  };
}

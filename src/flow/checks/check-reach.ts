import { problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import { answersThatReach } from '../reach.ts';
import type { Lookup } from './references.ts';

/** A question that no answers lead to is a mistake in its branch. */
export function checkReach(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  return parts.questions
    .filter((one) => answersThatReach(one.item, lookup.questions) === undefined)
    .map((one) =>
      problemAt(one, ['when'], `no answers lead to "${one.item.id}": its branch can never hold.`),
    );
}

import { lookupOfFlow } from '../../flow/checks/lookup-of-flow.ts';
import type { Flow } from '../../flow/flow.ts';
import { type Located, problemAt } from '../../flow/located.ts';
import type { FlowProblem } from '../../flow/problem.ts';
import { checkCards } from './check-cards.ts';
import { checkHouse } from './check-house.ts';
import { checkPhrases } from './check-phrases.ts';
import { checkWords } from './check-words.ts';
import { gatherPractice, type ReadPracticeFile } from './practice-parts.ts';

/** A part that is read from one place only. */
function onlyOnce(part: string, [first, second]: readonly Located<unknown>[]): FlowProblem[] {
  if (!first || !second) return [];
  const { line } = first.document.positionOf(first.path);
  return [problemAt(second, [], `there is more than one "${part}": see ${first.document.path}:${line}.`)];
}

/** Everything wrong between practice files of the right shape and the flow they belong to. */
export function checkPractice(
  flow: Flow,
  files: readonly ReadPracticeFile[],
  computations: readonly string[],
): FlowProblem[] {
  const parts = gatherPractice(files);
  const lookup = lookupOfFlow(flow, computations);
  return [
    ...onlyOnce('house', parts.houses),
    ...onlyOnce('words', parts.words),
    ...parts.houses.flatMap((house) => checkHouse(house, lookup)),
    ...parts.words.flatMap((words) => checkWords(words, lookup)),
    ...checkCards(parts, lookup, flow),
    ...checkPhrases(parts, lookup),
  ];
}

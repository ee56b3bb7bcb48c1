import type { FlowDocument } from '../document.ts';
import { problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import { checkActions } from './check-actions.ts';
import { checkCalls } from './check-calls.ts';
import { checkFindings } from './check-findings.ts';
import { checkQuestions } from './check-questions.ts';
import { checkReach } from './check-reach.ts';
import { checkRulebooks } from './check-rulebooks.ts';
import { duplicateIds, indexParts, type Lookup, reference } from './references.ts';

function nowhere(documents: readonly FlowDocument[], problem: string): FlowProblem {
  return { path: documents[0]?.path ?? 'flows', line: 1, column: 1, at: '', problem };
}

function checkWhole(parts: FlowParts, lookup: Lookup, documents: readonly FlowDocument[]): FlowProblem[] {
  const [walk, second] = parts.walks;
  if (!walk) return [nowhere(documents, 'no file has a "walk:" with the stops in order.')];
  const used = new Set(parts.questions.map((one) => one.item.stop));
  return [
    ...(second ? [problemAt(second, [], 'there is more than one "walk:".')] : []),
    ...walk.item.stops
      .map((stop, index) => ({ stop, index }))
      .filter(({ stop }) => !used.has(stop.id))
      .map(({ stop, index }) => problemAt(walk, ['stops', index], `the stop "${stop.id}" has no questions.`)),
    ...parts.groups.flatMap((group) => [
      ...reference(group, ['sides'], 'question', group.item.sides, lookup.questions),
      ...(parts.questions.some(({ item }) => item.counts === group.item.id)
        ? []
        : [
            problemAt(
              group,
              ['id'],
              `no question counts "${group.item.id}": one of "kind: count" is needed.`,
            ),
          ]),
    ]),
    ...(parts.words.some((one) => one.item.language === walk.item.language)
      ? []
      : [problemAt(walk, ['language'], `there is no "words:" for the language "${walk.item.language}".`)]),
  ];
}

function checkTwice(parts: FlowParts): FlowProblem[] {
  return [
    ...duplicateIds('question', parts.questions),
    ...duplicateIds('finding', parts.findings),
    ...duplicateIds('element', parts.elements),
    ...duplicateIds('set', parts.sets),
    ...duplicateIds('way in', parts.waysIn),
    ...duplicateIds('action', parts.actions),
    ...duplicateIds('caution', parts.cautions),
    ...duplicateIds('cost line', parts.costs),
    ...duplicateIds('upkeep', parts.upkeep),
    ...duplicateIds('source', parts.sources),
    ...duplicateIds('rulebook', parts.rulebooks),
    ...duplicateIds('group', parts.groups),
    ...onceOnly(parts, 'role', 'has the role'),
    ...onceOnly(parts, 'counts', 'counts'),
  ];
}

/** A role is played, and a group counted, by one question. */
function onceOnly(parts: FlowParts, key: 'role' | 'counts', does: string): FlowProblem[] {
  return parts.questions.flatMap((one, index) => {
    const value = one.item[key];
    const before = parts.questions
      .slice(0, index)
      .find(({ item }) => value !== undefined && item[key] === value);
    return before ? [problemAt(one, [key], `"${before.item.id}" already ${does} "${value}".`)] : [];
  });
}

/** Everything wrong between the parts of a flow whose files have the right shape. */
export function checkParts(
  parts: FlowParts,
  documents: readonly FlowDocument[],
  computations: readonly string[],
): FlowProblem[] {
  const lookup = indexParts(parts, computations);
  const general = parts.walks.flatMap((walk) =>
    reference(walk, ['generalRulebook'], 'rulebook', walk.item.generalRulebook, lookup.rulebooks),
  );
  // Without the general rulebook every limit in the files would be reported as missing.
  if (general.length > 0) return general;
  const references = [
    ...checkWhole(parts, lookup, documents),
    ...checkTwice(parts),
    ...checkQuestions(parts, lookup),
    ...checkFindings(parts, lookup),
    ...checkActions(parts, lookup),
    ...checkRulebooks(parts, lookup),
    ...checkCalls(parts, lookup),
    ...parts.cautions.flatMap((one) =>
      one.item.sources.flatMap((id, index) =>
        reference(one, ['sources', index], 'source', id, lookup.sources),
      ),
    ),
    ...parts.costs.flatMap((one) => reference(one, ['source'], 'source', one.item.source, lookup.sources)),
  ];
  return references.length > 0 ? references : checkReach(parts, lookup);
}

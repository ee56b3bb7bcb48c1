import { readBound } from '../../flow/bound.ts';
import { duplicateIds, type Lookup, reference } from '../../flow/checks/references.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import type { Flow } from '../../flow/flow.ts';
import { problemAt } from '../../flow/located.ts';
import type { FlowProblem } from '../../flow/problem.ts';
import type { PracticeParts } from './practice-parts.ts';

/** What a session holds against a trainee besides wrong advice and unsafe acts. */
const ownFaults = ['promise', 'alarm', 'danger', 'order', 'costly-first'];

type PracticeCard = PracticeParts['cards'][number];

function checkAnswer(card: PracticeCard, lookup: Lookup, flow: Flow): FlowProblem[] {
  const { item } = card;
  if ('limit' in item) {
    const missing = reference(card, ['limit'], 'limit', item.limit, lookup.limits);
    if (missing.length > 0) return missing;
    const general = flow.rulebooks.find((one) => one.id === flow.walk.generalRulebook);
    const value = general?.limits[item.limit]?.value;
    const isLength = typeof value === 'string' && typeof readBound(value, 'length') === 'number';
    return isLength
      ? []
      : [problemAt(card, ['limit'], `"${item.limit}" is no length, and a card asks for a length.`)];
  }
  const ids = item.options.map((option) => option.id);
  const twice = ids.flatMap((id, index) => (ids.indexOf(id) < index ? [index] : []));
  return [
    ...twice.map((index) =>
      problemAt(card, ['options', index, 'id'], `the option "${ids[index]}" is there twice.`),
    ),
    ...(ids.includes(item.right)
      ? []
      : [
          problemAt(
            card,
            ['right'],
            `"${item.right}" is none of its options.`,
            didYouMean(item.right, ids) ?? `It has: ${ids.join(', ')}.`,
          ),
        ]),
  ];
}

/** Everything in the fact cards that the flow and the trainee's words do not have. */
export function checkCards(parts: PracticeParts, lookup: Lookup, flow: Flow): FlowProblem[] {
  const words = parts.words.flatMap(({ item }) => [...item.unsafe, ...item.wrongAdvice]);
  const faults = new Set([...ownFaults, ...words.map((one) => one.id)]);
  const occasions = [
    ['findings', 'finding', lookup.findings],
    ['actions', 'action', lookup.actions],
    ['cautions', 'caution', lookup.cautions],
    ['faults', 'fault', faults],
  ] as const;
  return [
    ...duplicateIds('card', parts.cards),
    ...parts.cards.flatMap((card) => [
      ...reference(card, ['source'], 'source', card.item.source, lookup.sources),
      ...checkAnswer(card, lookup, flow),
      ...occasions.flatMap(([key, what, known]) =>
        card.item.for[key].flatMap((id, index) => reference(card, ['for', key, index], what, id, known)),
      ),
    ]),
  ];
}

import { type Lookup, reference, references } from '../../flow/checks/references.ts';
import { type Located, problemAt } from '../../flow/located.ts';
import type { FlowProblem } from '../../flow/problem.ts';
import type { TraineeWords } from '../schema/practice-file.ts';

type Words = Located<TraineeWords>;

/** Wrong advice and unsafe acts: their sources, and that each name stands for one of them. */
function checkFaults(words: Words, lookup: Lookup): FlowProblem[] {
  const before = new Set<string>();
  return (['unsafe', 'wrongAdvice'] as const).flatMap((key) =>
    words.item[key].flatMap(({ id, source }, index) => {
      const twice = before.has(`${key} ${id}`);
      before.add(`${key} ${id}`);
      return [
        ...reference(words, [key, index, 'source'], 'source', source, lookup.sources),
        ...(twice ? [problemAt(words, [key, index, 'id'], `"${id}" is there twice.`)] : []),
      ];
    }),
  );
}

/** Everything in a trainee's words that stands for something the flow does not have. */
export function checkWords(words: Words, lookup: Lookup): FlowProblem[] {
  const named = [
    ['questions', 'question', lookup.questions],
    ['findings', 'finding', lookup.findings],
    ['actions', 'action', lookup.actions],
    ['cautions', 'caution', lookup.cautions],
    ['limits', 'limit', lookup.limits],
  ] as const;
  return [
    ...named.flatMap(([key, what, known]) =>
      Object.keys(words.item[key]).flatMap((id) => reference(words, [key, id], what, id, known)),
    ),
    ...references(words, 'askOnly', 'question', words.item.askOnly, lookup.questions),
    ...checkFaults(words, lookup),
  ];
}

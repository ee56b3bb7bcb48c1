import { readLength, readSlope } from '../../quantities/index.ts';
import { problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import { type Lookup, reference } from './references.ts';

/** Whether a limit written as text is a length with a unit or a slope. */
function isQuantity(written: string): boolean {
  const length = readLength(written, { unsafeEnd: 'low' });
  if (length.kind === 'length' && length.assumedUnit === undefined) return true;
  return readSlope(written).kind === 'slope';
}

/** Everything wrong with rulebooks: a place may change only what the general rulebook has. */
export function checkRulebooks(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  return parts.rulebooks.flatMap((located) => {
    const { item } = located;
    return [
      ...(item.over === undefined
        ? []
        : reference(located, ['over'], 'rulebook', item.over, lookup.rulebooks)),
      ...Object.entries(item.limits).flatMap(([id, limit]) => [
        ...reference(located, ['limits', id], 'limit of the general rulebook', id, lookup.limits),
        ...reference(located, ['limits', id, 'source'], 'source', limit.source, lookup.sources),
        ...(typeof limit.value === 'string' && !isQuantity(limit.value)
          ? [
              problemAt(
                located,
                ['limits', id, 'value'],
                `"${limit.value}" is neither a length with a unit, such as "5 ft", nor a slope.`,
              ),
            ]
          : []),
      ]),
      ...item.notes.flatMap((note, index) => [
        ...reference(located, ['notes', index, 'source'], 'source', note.source, lookup.sources),
        ...(note.stop === undefined
          ? []
          : reference(located, ['notes', index, 'stop'], 'stop', note.stop, lookup.stops)),
      ]),
    ];
  });
}

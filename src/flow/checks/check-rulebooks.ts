import { readLength, readSlope } from '../../quantities/index.ts';
import { didYouMean } from '../did-you-mean.ts';
import { type Located, problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import type { Limit, Rulebook } from '../schema/rulebook.ts';
import { type Lookup, reference } from './references.ts';

type Dimension = 'length with a unit' | 'slope' | 'number' | 'yes or no (true or false)';

/** What a limit measures; nothing when its text says neither a length with a unit nor a slope. */
function dimensionOf(value: Limit['value']): Dimension | undefined {
  if (typeof value === 'boolean') return 'yes or no (true or false)';
  if (typeof value === 'number') return 'number';
  const length = readLength(value, { unsafeEnd: 'low' });
  if (length.kind === 'length' && length.assumedUnit === undefined) return 'length with a unit';
  // "1/8" alone reads as a slope too, and is mostly a length whose unit was forgotten.
  return /%|°|deg/i.test(value) && readSlope(value).kind === 'slope' ? 'slope' : undefined;
}

function checkLimit(
  located: Located<Rulebook>,
  id: string,
  limit: Limit,
  general: Rulebook | undefined,
): FlowProblem[] {
  const inside = ['limits', id];
  const dimension = dimensionOf(limit.value);
  if (dimension === undefined) {
    const text = `"${limit.value}" is neither a length with a unit, such as "5 ft", nor a slope, such as "20 %".`;
    return [problemAt(located, [...inside, 'value'], text)];
  }
  const over = general?.limits[id];
  if (!over) {
    const text = `the general rulebook has no limit "${id}": a place may change only what stands there.`;
    return [problemAt(located, inside, text, didYouMean(id, Object.keys(general?.limits ?? {})))];
  }
  const wanted = dimensionOf(over.value);
  return wanted === undefined || wanted === dimension
    ? []
    : [problemAt(located, [...inside, 'value'], `a ${wanted} is expected here, as in the general rulebook.`)];
}

/** Everything wrong with rulebooks: a place may change only what the general rulebook has. */
export function checkRulebooks(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  const generalId = parts.walks[0]?.item.generalRulebook;
  const general = parts.rulebooks.find(({ item }) => item.id === generalId)?.item;
  return parts.rulebooks.flatMap((located) => {
    const { item } = located;
    return [
      ...(item.over === undefined
        ? []
        : reference(located, ['over'], 'rulebook', item.over, lookup.rulebooks)),
      ...Object.entries(item.limits).flatMap(([id, limit]) => [
        ...checkLimit(located, id, limit, general),
        ...reference(located, ['limits', id, 'source'], 'source', limit.source, lookup.sources),
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

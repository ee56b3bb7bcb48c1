import { problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import { type Lookup, reference, references } from './references.ts';

/** Calls: each part once, every stop line there, and every question of the short call a question of the walk. */
export function checkCalls(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  const [call, ...moreCalls] = parts.calls;
  const [short, ...moreShort] = parts.shortCalls;
  const phrases = new Set(parts.phrases.map((one) => one.item.id));
  return [
    ...moreCalls.map((one) => problemAt(one, [], 'there is more than one "call:".')),
    ...moreShort.map((one) => problemAt(one, [], 'there is more than one "shortCall:".')),
    ...(call?.item.unsafe ?? []).flatMap((one, index) =>
      call ? reference(call, ['unsafe', index, 'id'], 'phrase', `call.stop.${one.id}`, phrases) : [],
    ),
    ...(short ? references(short, 'first', 'question', short.item.first, lookup.questions) : []),
    ...Object.keys(short?.item.worth ?? {}).flatMap((id) =>
      short ? reference(short, ['worth', id], 'question', id, lookup.questions) : [],
    ),
  ];
}

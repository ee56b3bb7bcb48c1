import type { Practice } from '../practice.ts';
import { stopsOf } from '../session/known.ts';
import type { PracticeState } from '../session/state.ts';
import type { OrderKept, PassedOver } from './debrief.ts';

function passedOver(order: readonly string[], visits: readonly string[]): PassedOver[] {
  const seen = new Set<string>();
  const passed = new Map<string, string>();
  for (const stop of visits) {
    for (const before of order.slice(0, order.indexOf(stop)))
      if (!seen.has(before) && !passed.has(before)) passed.set(before, stop);
    seen.add(stop);
  }
  return order.flatMap((stop) => {
    const at = passed.get(stop);
    return at === undefined ? [] : [{ stop, at, madeUp: seen.has(stop) }];
  });
}

function dangerAsked(practice: Practice, state: PracticeState): OrderKept['danger'] {
  const danger = practice.programme.checklist.index.roles.get('danger');
  if (!danger || state.part !== undefined) return undefined;
  const asked = state.events.findIndex((event) => event.kind === 'asked' && event.key === danger.id);
  if (asked < 0) return 'never';
  const beyond = state.events.findIndex((event) => event.kind === 'went' && event.stop !== danger.stop);
  return beyond < 0 || asked < beyond ? 'first' : 'late';
}

/** How far the walk was led in its order. */
export function orderKept(practice: Practice, state: PracticeState): OrderKept {
  const order = stopsOf(practice, state).map((stop) => stop.id);
  const visits = state.events.flatMap((event) => (event.kind === 'went' ? [event.stop] : []));
  const visited = new Set<string>();
  let adviceEarly = false;
  for (const event of state.events) {
    if (event.kind === 'went') visited.add(event.stop);
    if (event.kind === 'advised' && order.some((stop) => !visited.has(stop))) adviceEarly = true;
  }
  return {
    danger: dangerAsked(practice, state),
    passedOver: passedOver(order, visits),
    neverVisited: order.filter((stop) => !visited.has(stop)),
    adviceEarly,
  };
}

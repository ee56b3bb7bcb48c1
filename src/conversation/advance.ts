import type { WalkEvent } from '../machine/events.ts';
import { stepWalk } from '../machine/place.ts';
import type { Programme } from './programme.ts';
import type { Pending, WalkRecord } from './record.ts';

const positionOf = (record: WalkRecord) => ({
  phase: record.cursor.phase,
  key: record.cursor.key,
  sheet: record.sheet,
});

/** Takes an event through the machine into a new record; a short question that was pending is done with. */
export function advance(programme: Programme, record: WalkRecord, event: WalkEvent): WalkRecord {
  const { machine, checklist } = programme;
  const { phase, key, sheet } = stepWalk(machine, checklist.index, positionOf(record), event);
  return { ...record, sheet, cursor: key === undefined ? { phase } : { phase, key } };
}

/** The record with a short question pending. */
export function withPending(record: WalkRecord, pending: Pending): WalkRecord {
  return { ...record, cursor: { ...record.cursor, pending } };
}

/** The record without one. */
export function withoutPending(record: WalkRecord): WalkRecord {
  const { pending: _, ...cursor } = record.cursor;
  return { ...record, cursor };
}

/** What of the short questions waits for its answer whatever else is said. */
const lasting: ReadonlySet<Pending['kind']> = new Set(['emergency', 'safe', 'opening']);

/** The record without a short question that is out of sight: a later yes is none to it. */
export function withoutPassing(record: WalkRecord): WalkRecord {
  const { pending } = record.cursor;
  return pending === undefined || lasting.has(pending.kind) ? record : withoutPending(record);
}

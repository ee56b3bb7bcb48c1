import type { WalkSummary } from '../conversation/ports.ts';
import type { WalkRecord } from '../conversation/record.ts';

/** Finds the label that a person gave to a walk; the flow knows which answer that is, a store does not. */
export type LabelOf = (record: WalkRecord) => string | undefined;

/** The line of a walk in the list: answers count unless they were skipped. */
export function summarise(record: WalkRecord, labelOf: LabelOf): WalkSummary {
  const label = labelOf(record);
  return {
    id: record.id,
    startedAt: record.startedAt,
    updatedAt: record.updatedAt,
    phase: record.cursor.phase,
    answered: Object.values(record.sheet).filter((answer) => answer.status !== 'skipped').length,
    ...(label === undefined ? {} : { label }),
  };
}

/** Newest first; walks of the same moment by id, so that the order never changes by itself. */
export function newestFirst(a: WalkSummary, b: WalkSummary): number {
  if (a.updatedAt !== b.updatedAt) return a.updatedAt < b.updatedAt ? 1 : -1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

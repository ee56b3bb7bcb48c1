import type { DoneJob, WalkRecord } from './record.ts';

/** A walk begun afresh: nothing was done on its answers yet. */
export function withoutDone({ done: _, earlier: __, ...record }: WalkRecord): WalkRecord {
  return record;
}

/**
 * Marks jobs as done on a day (ISO date); one that is marked already keeps its first day. The answers of now are kept as
 * earlier ones when they differ from those kept last, so that before and after can be compared.
 */
export function markDone(
  record: WalkRecord,
  actions: readonly string[],
  date: string,
  now: Date,
): WalkRecord {
  const before = record.done ?? [];
  const known = new Set(before.map((one) => one.action));
  const added = [...new Set(actions)]
    .filter((one) => !known.has(one))
    .map((action): DoneJob => ({ action, date }));
  if (added.length === 0) return record;
  const earlier = record.earlier ?? [];
  const kept = earlier.at(-1)?.sheet;
  const changed = JSON.stringify(kept) !== JSON.stringify(record.sheet);
  return {
    ...record,
    done: [...before, ...added],
    earlier: changed ? [...earlier, { date, sheet: record.sheet }] : earlier,
    revision: record.revision + 1,
    updatedAt: now.toISOString(),
  };
}

/** Takes marks back. */
export function unmarkDone(record: WalkRecord, actions: readonly string[], now: Date): WalkRecord {
  const left = (record.done ?? []).filter((one) => !actions.includes(one.action));
  if (left.length === (record.done ?? []).length) return record;
  const { done: _, ...rest } = record;
  return {
    ...rest,
    ...(left.length > 0 ? { done: left } : {}),
    revision: record.revision + 1,
    updatedAt: now.toISOString(),
  };
}

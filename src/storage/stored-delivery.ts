import * as z from 'zod';
import type { Delivery } from '../conversation/ports.ts';
import type { WalkId } from '../conversation/record.ts';

const Row = z.object({
  id: z.string(),
  walk_id: z.string(),
  revision: z.number().int(),
  at: z.string(),
  state: z.enum(['waiting', 'sent', 'dead']),
  attempts: z.number().int(),
  due_at: z.string(),
  problem: z.string().nullable(),
});

/** Reads a row of the outbox. Throws when it is not one. */
export function readDeliveryRow(row: unknown): Delivery {
  const { walk_id, due_at, problem, ...rest } = Row.parse(row);
  return { ...rest, walk: walk_id as WalkId, dueAt: due_at, ...(problem === null ? {} : { problem }) };
}

import type { Pool } from 'pg';
import type { DeliveryStore } from '../../conversation/ports.ts';
import { readDeliveryRow } from '../stored-delivery.ts';
import { asStorageError } from './transaction.ts';

const columns = 'id, walk_id, revision, at, state, attempts, due_at, problem';

/** The outbox in PostgreSQL; a claim is a conditional update, so that any number of servers may deliver. */
export function postgresDeliveries(pool: Pool): DeliveryStore {
  const run = async (text: string, values: readonly unknown[]) => {
    try {
      return await pool.query(text, [...values]);
    } catch (error) {
      throw asStorageError(error);
    }
  };
  return {
    due: async (now, limit) => {
      const order = "WHERE state = 'waiting' AND due_at <= $1 ORDER BY due_at, id LIMIT $2";
      return (await run(`SELECT ${columns} FROM deliveries ${order}`, [now, limit])).rows.map(
        readDeliveryRow,
      );
    },
    claim: async ({ id, dueAt }, until) => {
      const text = "UPDATE deliveries SET due_at = $1 WHERE id = $2 AND state = 'waiting' AND due_at = $3";
      return (await run(text, [until, id, dueAt])).rowCount === 1;
    },
    settle: async (id, outcome) => {
      const dueAt = outcome.state === 'waiting' ? outcome.dueAt : null;
      const problem = outcome.state === 'sent' ? null : outcome.problem;
      await run(
        'UPDATE deliveries SET state = $1, attempts = attempts + 1, due_at = COALESCE($2, due_at), problem = $3 WHERE id = $4',
        [outcome.state, dueAt, problem, id],
      );
    },
    list: async (state, limit) => {
      const text = `SELECT ${columns} FROM deliveries WHERE state = $1 ORDER BY at DESC, id LIMIT $2`;
      return (await run(text, [state, limit])).rows.map(readDeliveryRow);
    },
    resend: async (id, now) => {
      const text =
        "UPDATE deliveries SET state = 'waiting', attempts = 0, due_at = $1, problem = NULL WHERE id = $2 AND state = 'dead'";
      return (await run(text, [now, id])).rowCount === 1;
    },
  };
}

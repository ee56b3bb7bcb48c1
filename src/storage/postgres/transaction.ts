import type { Pool, PoolClient } from 'pg';
import { StorageError } from '../storage-error.ts';

/** Thrown inside a transaction to undo it with an outcome that is no fault. */
export class Undo<T> extends Error {
  readonly outcome: T;
  constructor(outcome: T) {
    super('undone');
    this.outcome = outcome;
  }
}

/** What another turn did meanwhile, in engines that say it with an error: the turn is run again. */
const conflictCodes = new Set(['40001', '40P01']);

/** Whether an error says that two turns met. */
export const isConflict = (error: unknown) => conflictCodes.has((error as { code?: string }).code ?? '');

/** A fault of the database as a StorageError, so that nothing of what was sent gets into a log. */
export function asStorageError(error: unknown): unknown {
  if (error instanceof StorageError || error instanceof Undo || isConflict(error)) return error;
  const { code } = error as { code?: string };
  const message = `The database cannot be used just now${code === undefined ? '' : ` (${code})`}. Send it again.`;
  return new StorageError('unavailable', 'the database', message, error);
}

/**
 * Runs work in one transaction. When it fails, nothing of it is kept, unless the connection broke while the commit
 * was under way: then it may have been, and only the stored reply to the message tells.
 */
export async function inTransaction<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect();
  let broken: Error | undefined;
  try {
    await client.query('BEGIN');
    const outcome = await work(client);
    await client.query('COMMIT');
    return outcome;
  } catch (error) {
    try {
      await client.query('ROLLBACK');
    } catch (failure) {
      broken = failure as Error;
    }
    throw error;
  } finally {
    // A connection whose state is not known is not used again.
    client.release(broken);
  }
}

import type { Pool, PoolClient } from 'pg';
import { StorageError } from '../storage-error.ts';
import type { PostgresMigration } from './migrations.ts';
import { inTransaction } from './transaction.ts';

/** Two programs that make the same table at once: one of them is refused, and finds it there the next time. */
const madeMeanwhile = new Set(['23505', '42P07', '42710', 'XX000', '40001']);

async function prepareLockRow(pool: Pool): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await pool.query(
        'CREATE TABLE IF NOT EXISTS migrations (number INTEGER PRIMARY KEY, name TEXT NOT NULL)',
      );
      // Row 0 is no step: whoever holds it may change the tables.
      await pool.query(
        "INSERT INTO migrations (number, name) VALUES (0, 'lock') ON CONFLICT (number) DO NOTHING",
      );
      return;
    } catch (error) {
      if (!madeMeanwhile.has((error as { code?: string }).code ?? '') || attempt >= 20) throw error;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}

async function applyStep(client: PoolClient, step: PostgresMigration): Promise<void> {
  await client.query('SELECT number FROM migrations WHERE number = 0 FOR UPDATE');
  const { rows } = await client.query('SELECT number FROM migrations WHERE number = $1', [step.number]);
  if (rows.length > 0) return;
  for (const statement of step.statements) await client.query(statement);
  await client.query(
    'INSERT INTO migrations (number, name) VALUES ($1, $2) ON CONFLICT (number) DO NOTHING',
    [step.number, step.name],
  );
}

/**
 * Brings the tables up to date. Each step and its number are one transaction under a lock row, so that several
 * servers may start at once and a step that was cut short starts again.
 */
export async function migratePostgres(pool: Pool, steps: readonly PostgresMigration[]): Promise<void> {
  await prepareLockRow(pool);
  const { rows } = await pool.query<{ newest: number }>('SELECT MAX(number) AS newest FROM migrations');
  const [newest, known] = [rows[0]?.newest ?? 0, steps.at(-1)?.number ?? 0];
  if (newest > known) {
    throw new StorageError(
      'newerStore',
      'the database',
      `The database was written by a newer roofdown (tables ${newest}, this one knows ${known}). ` +
        'Use the newer one; nothing was changed.',
    );
  }
  for (const step of steps) await inTransaction(pool, (client) => applyStep(client, step));
}

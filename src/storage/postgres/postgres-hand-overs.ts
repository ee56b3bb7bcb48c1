import type { Pool } from 'pg';
import type { HandOverStore } from '../../conversation/ports.ts';
import { asStorageError } from './transaction.ts';

const insert =
  'INSERT INTO hand_overs (code, walk_id, until, sealed) VALUES ($1, $2, $3, $4) ' +
  'ON CONFLICT (code) DO UPDATE SET until = excluded.until, sealed = excluded.sealed ' +
  'WHERE hand_overs.walk_id = excluded.walk_id AND hand_overs.taken_by IS NULL RETURNING walk_id';
const take =
  'UPDATE hand_overs SET taken_by = $2, until = CASE WHEN until < $4 THEN until ELSE $4 END ' +
  'WHERE code = $1 AND until > $3 AND (taken_by IS NULL OR taken_by = $2) RETURNING sealed';

/** Waiting walks in PostgreSQL; a take is a conditional update, so that of any number of takers one has it. */
export function postgresHandOvers(pool: Pool): HandOverStore {
  const rowsOf = async (text: string, values: readonly unknown[]) => {
    try {
      return (await pool.query<Record<string, string>>(text, [...values])).rows;
    } catch (error) {
      throw asStorageError(error);
    }
  };
  return {
    leave: async ({ code, walk, until, sealed }) => {
      const left = await rowsOf(insert, [code, walk, until, sealed]);
      if (left.length > 0) return 'left';
      const [row] = await rowsOf('SELECT walk_id FROM hand_overs WHERE code = $1', [code]);
      return row?.['walk_id'] === walk ? 'taken' : 'other';
    },
    untaken: async (walk) => {
      const text = 'SELECT code FROM hand_overs WHERE walk_id = $1 AND taken_by IS NULL';
      return (await rowsOf(text, [walk])).map((row) => row['code'] ?? '');
    },
    renew: async (code, sealed) => {
      const text = 'UPDATE hand_overs SET sealed = $2 WHERE code = $1 AND taken_by IS NULL';
      await rowsOf(text, [code, sealed]);
    },
    withdraw: async (walk) => void (await rowsOf('DELETE FROM hand_overs WHERE walk_id = $1', [walk])),
    waiting: async (code, now) => {
      const text = 'SELECT sealed FROM hand_overs WHERE code = $1 AND until > $2 AND taken_by IS NULL';
      return (await rowsOf(text, [code, now]))[0]?.['sealed'];
    },
    take: async (code, { by, now, again }) => (await rowsOf(take, [code, by, now, again]))[0]?.['sealed'],
  };
}

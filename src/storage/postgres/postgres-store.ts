import { Pool } from 'pg';
import * as z from 'zod';
import type { ServerStore, WalkSummary } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { createRecordMemory, type RecordMemory } from '../record-memory.ts';
import { StorageError } from '../storage-error.ts';
import { writeStoredRecord } from '../stored-record.ts';
import { readStoredReply } from '../stored-reply.ts';
import type { LabelOf } from '../summary.ts';
import { keepTurn, removeBelongings, type TurnWithData } from './keep-turn.ts';
import { migratePostgres } from './migrate.ts';
import { postgresMigrations } from './migrations.ts';
import { postgresDeliveries } from './postgres-deliveries.ts';
import { postgresHandOvers } from './postgres-hand-overs.ts';
import { asStorageError, inTransaction, isConflict, Undo } from './transaction.ts';

export interface PostgresStoreOptions {
  /** `postgres://…` */
  readonly url: string;
  readonly connections?: number;
  readonly labelOf?: LabelOf;
}

const SummaryRow = z.object({
  id: z.string(),
  started_at: z.string(),
  updated_at: z.string(),
  phase: z.enum(['asking', 'readBack', 'finished', 'emergency', 'paused']).catch('paused'),
  answered: z.number().int().catch(0),
  label: z.string().nullable(),
});

function toSummary(row: unknown): WalkSummary {
  const { id, started_at: startedAt, updated_at: updatedAt, phase, answered, label } = SummaryRow.parse(row);
  return { id: id as WalkId, startedAt, updatedAt, phase, answered, ...(label === null ? {} : { label }) };
}

function openPool({ url, connections = 10 }: PostgresStoreOptions): Pool {
  const pool = new Pool({
    connectionString: url,
    max: connections,
    connectionTimeoutMillis: 5_000,
    // A server that hangs must not hold a row of a walk for long.
    query_timeout: 15_000,
    keepAlive: true,
  });
  // A connection that breaks is replaced, and the query on it rejects; without listeners it would end the program.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  return pool;
}

async function commitTurn(
  pool: Pool,
  turn: TurnWithData,
  labelOf: LabelOf,
): Promise<'saved' | 'conflict' | 'seen'> {
  try {
    return await inTransaction(pool, (client) => keepTurn(client, turn, labelOf));
  } catch (error) {
    if (error instanceof Undo) return error.outcome as 'conflict' | 'seen';
    if (isConflict(error)) return 'conflict';
    throw error;
  }
}

async function loadWalk(pool: Pool, memory: RecordMemory, id: WalkId): Promise<WalkRecord | undefined> {
  const query = { name: 'load-walk', text: 'SELECT data FROM walks WHERE id = $1', values: [id] };
  const { rows } = await pool.query<{ data: string }>(query);
  if (!rows[0]) return undefined;
  const read = memory.read(rows[0].data, id);
  if (read.kind === 'read') return read.value;
  throw new StorageError(
    'unreadableWalk',
    id,
    `The walk ${id} cannot be read (${read.reason}). It is left as it is.`,
  );
}

async function loadReply(pool: Pool, channel: string, messageId: string) {
  const text = 'SELECT reply FROM messages WHERE channel = $1 AND message_id = $2';
  const { rows } = await pool.query<{ reply: string }>({
    name: 'load-reply',
    text,
    values: [channel, messageId],
  });
  if (!rows[0]) return undefined;
  const read = readStoredReply(rows[0].reply);
  if (read.kind === 'read') return read.value;
  const message = `The reply to message ${messageId} of ${channel} cannot be read (${read.reason}). It is left as it is.`;
  throw new StorageError('unreadableReply', messageId, message);
}

function removeWalk(pool: Pool, id: WalkId): Promise<boolean> {
  return inTransaction(pool, async (client) => {
    await removeBelongings(client, id);
    return (await client.query('DELETE FROM walks WHERE id = $1', [id])).rowCount === 1;
  });
}

async function sweepOld(
  pool: Pool,
  { walksBefore, messagesBefore, handOversBefore }: Parameters<ServerStore['sweep']>[0],
): Promise<number> {
  if (handOversBefore !== undefined)
    await pool.query('DELETE FROM hand_overs WHERE until < $1', [handOversBefore]);
  if (messagesBefore !== undefined) {
    await pool.query('DELETE FROM messages WHERE kept_at < $1', [messagesBefore]);
    await pool.query("DELETE FROM deliveries WHERE state = 'sent' AND at < $1", [messagesBefore]);
  }
  if (walksBefore === undefined) return 0;
  return inTransaction(pool, async (client) => {
    const old = 'WHERE walk_id IN (SELECT id FROM walks WHERE updated_at < $1)';
    await client.query(`DELETE FROM messages ${old}`, [walksBefore]);
    await client.query(`DELETE FROM deliveries ${old}`, [walksBefore]);
    await client.query(`DELETE FROM hand_overs ${old}`, [walksBefore]);
    return (await client.query('DELETE FROM walks WHERE updated_at < $1', [walksBefore])).rowCount ?? 0;
  });
}

/**
 * The shared store: any number of servers on one database. Only upserts, conditional updates and one lock row are
 * used. A commit that resolved is as safe as the database makes it (`synchronous_commit` must be on, as it is by
 * default). Throws a StorageError with code `unavailable` when the database cannot be reached.
 */
export async function createPostgresStore(options: PostgresStoreOptions): Promise<ServerStore> {
  const pool = openPool(options);
  const labelOf = options.labelOf ?? (() => undefined);
  const safely = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      throw asStorageError(error);
    }
  };
  try {
    await safely(() => migratePostgres(pool, postgresMigrations));
  } catch (error) {
    await pool.end();
    throw error;
  }
  const columns = 'id, started_at, updated_at, phase, answered, label';
  const memory = createRecordMemory();
  let closed = false;
  return {
    load: (id) => safely(() => loadWalk(pool, memory, id)),
    replyTo: (channel, messageId) => safely(() => loadReply(pool, channel, messageId)),
    commit: (turn) =>
      safely(async () => {
        const data = writeStoredRecord(turn.record);
        const kept = await commitTurn(pool, { ...turn, data }, labelOf);
        if (kept === 'saved' && turn.erase) memory.forget(turn.record.id);
        else if (kept === 'saved') memory.remember(data, turn.record);
        return kept;
      }),
    list: () =>
      safely(async () => {
        // The order of bytes, as in the other stores, whatever the database sorts by.
        const order = 'ORDER BY updated_at DESC, id COLLATE "C" ASC';
        return (await pool.query(`SELECT ${columns} FROM walks ${order}`)).rows.map(toSummary);
      }),
    remove: (id) => {
      memory.forget(id);
      return safely(() => removeWalk(pool, id));
    },
    deliveries: postgresDeliveries(pool),
    handOvers: postgresHandOvers(pool),
    sweep: (limits) => safely(() => sweepOld(pool, limits)),
    ping: () => safely(async () => void (await pool.query('SELECT 1'))),
    close: async () => {
      if (closed) return;
      closed = true;
      await pool.end();
    },
  };
}

import type Database from 'libsql';
import type { DeliveryStore, HandOverStore, ServerStore, WalkSummary } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { createRecordMemory, type RecordMemory } from '../record-memory.ts';
import { StorageError } from '../storage-error.ts';
import { writeStoredRecord } from '../stored-record.ts';
import { readStoredReply } from '../stored-reply.ts';
import type { LabelOf } from '../summary.ts';
import { type DeliveryStatements, prepareDeliveryStatements } from './delivery-statements.ts';
import { createGroupCommit, type GroupCommit } from './group-commit.ts';
import { type HandOverStatements, prepareHandOverStatements } from './hand-over-statements.ts';
import { keepTurn, removeWalk, sweep, type Tables } from './keep-turn.ts';
import { migrate } from './migrate.ts';
import { migrations } from './migrations.ts';
import { openDatabase } from './open-database.ts';
import { prepareStatements, type Statements, type WalkRow } from './statements.ts';

export interface SqliteStoreOptions {
  /** Path of the database file; made when it is not there. */
  readonly file: string;
  readonly labelOf?: LabelOf;
}

/**
 * The embedded store: one SQLite file, for one program at a time or a few on one machine. A commit that
 * resolved is on the disk. Throws a StorageError when the file cannot be used or a row cannot be read.
 */
export function createSqliteStore(options: SqliteStoreOptions): ServerStore {
  const db = openDatabase(options.file);
  const tables = prepareOrClose(db, options.file);
  const { statements, outbox, waiting } = tables;
  const group = createGroupCommit(db);
  const labelOf = options.labelOf ?? (() => undefined);
  const memory = createRecordMemory();
  let closed = false;
  const forget = (id: WalkId) => {
    memory.forget(id);
    forgetLog(db);
  };

  return {
    load: async (id) => loadWalk(statements, options.file, memory, id),
    replyTo: async (channel, messageId) => loadReply(statements, options.file, channel, messageId),
    commit: async (turn) => {
      const data = writeStoredRecord(turn.record);
      const kept = await group.run(() => keepTurn(tables, { ...turn, data }, labelOf));
      if (kept === 'saved') memory.remember(data, turn.record);
      if (turn.erase && kept === 'saved') forget(turn.record.id);
      return kept;
    },
    list: async () => statements.list().map(toSummary),
    remove: async (id) => {
      const removed = await group.run(() => removeWalk(tables, id));
      if (removed) forget(id);
      return removed;
    },
    deliveries: deliveriesOf(outbox, group),
    handOvers: handOversOf(waiting, group),
    sweep: async (limits) => {
      const removed = await group.run(() => sweep(tables, limits));
      forgetLog(db);
      return removed;
    },
    ping: async () => void db.prepare('SELECT 1').all(),
    close: async () => {
      if (closed) return;
      closed = true;
      group.finish();
      db.close();
    },
  };
}

function prepareOrClose(db: Database.Database, file: string): Tables {
  try {
    migrate(db, file, migrations);
    return {
      statements: prepareStatements(db),
      outbox: prepareDeliveryStatements(db),
      waiting: prepareHandOverStatements(db),
    };
  } catch (error) {
    db.close();
    throw error;
  }
}

function loadWalk(
  statements: Statements,
  file: string,
  memory: RecordMemory,
  id: WalkId,
): WalkRecord | undefined {
  const data = statements.walkData(id);
  if (data === undefined) return undefined;
  const read = memory.read(data, id);
  if (read.kind === 'read') return read.value;
  throw new StorageError(
    'unreadableWalk',
    id,
    `The walk ${id} in ${file} cannot be read (${read.reason}). It is left there as it is; other walks are fine.`,
  );
}

function loadReply(statements: Statements, file: string, channel: string, messageId: string) {
  const data = statements.reply(channel, messageId);
  if (data === undefined) return undefined;
  const read = readStoredReply(data.reply);
  if (read.kind === 'read') return read.value;
  throw new StorageError(
    'unreadableReply',
    data.walk_id,
    `The reply to message ${messageId} of ${channel}, walk ${data.walk_id} in ${file}, cannot be read ` +
      `(${read.reason}). It is left there as it is.`,
  );
}

function deliveriesOf(outbox: DeliveryStatements, group: GroupCommit): DeliveryStore {
  return {
    due: async (now, limit) => outbox.due(now, limit),
    claim: (delivery, until) => group.run(() => outbox.claim(delivery, until) > 0),
    settle: (id, outcome) => group.run(() => outbox.settle(id, outcome)),
    list: async (state, limit) => outbox.list(state, limit),
    resend: (id, now) => group.run(() => outbox.resend(id, now) > 0),
  };
}

function handOversOf(waiting: HandOverStatements, group: GroupCommit): HandOverStore {
  return {
    leave: (one) =>
      group.run(() => {
        if (waiting.add(one) > 0) return 'left';
        return waiting.walkOf(one.code) === one.walk ? 'taken' : 'other';
      }),
    untaken: async (walk) => waiting.untaken(walk),
    renew: (code, sealed) => group.run(() => waiting.renew(code, sealed)),
    withdraw: (walk) => group.run(() => waiting.removeOf(walk)),
    waiting: async (code, now) => waiting.waiting(code, now),
    take: (code, { by, now, again }) => group.run(() => waiting.take(code, by, now, again)),
  };
}

/** What was removed is overwritten in the file; its older pages in the write-ahead log go too. */
function forgetLog(db: Database.Database): void {
  db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
}

function toSummary(row: WalkRow): WalkSummary {
  return {
    id: row.id as WalkId,
    startedAt: row.started_at,
    updatedAt: row.updated_at,
    phase: row.phase as WalkSummary['phase'],
    answered: row.answered,
    ...(row.label === null ? {} : { label: row.label }),
  };
}

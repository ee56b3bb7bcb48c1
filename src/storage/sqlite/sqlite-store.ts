import type Database from 'libsql';
import type { TurnToKeep, WalkStore, WalkSummary } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { StorageError } from '../storage-error.ts';
import { readStoredRecord, writeStoredRecord } from '../stored-record.ts';
import { readStoredReply, writeStoredReply } from '../stored-reply.ts';
import { type LabelOf, summarise } from '../summary.ts';
import { createGroupCommit } from './group-commit.ts';
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
export function createSqliteStore(options: SqliteStoreOptions): WalkStore {
  const db = openDatabase(options.file);
  const statements = prepareOrClose(db, options.file);
  const group = createGroupCommit(db);
  const labelOf = options.labelOf ?? (() => undefined);
  let closed = false;

  return {
    load: async (id) => loadWalk(statements, options.file, id),
    replyTo: async (channel, messageId) => loadReply(statements, options.file, channel, messageId),
    commit: (turn) => group.run(() => keepTurn(statements, turn, labelOf)),
    list: async () => statements.list().map(toSummary),
    remove: (id) => group.run(() => removeWalk(statements, id)),
    close: async () => {
      if (closed) return;
      closed = true;
      group.finish();
      db.close();
    },
  };
}

function prepareOrClose(db: Database.Database, file: string): Statements {
  try {
    migrate(db, file, migrations);
    return prepareStatements(db);
  } catch (error) {
    db.close();
    throw error;
  }
}

function loadWalk(statements: Statements, file: string, id: WalkId): WalkRecord | undefined {
  const data = statements.walkData(id);
  if (data === undefined) return undefined;
  const read = readStoredRecord(data, id);
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

function keepTurn(statements: Statements, turn: TurnToKeep, labelOf: LabelOf): 'saved' | 'conflict' | 'seen' {
  const { record, message } = turn;
  if (message && statements.reply(message.channel, message.id) !== undefined) return 'seen';
  const row = {
    summary: summarise(record, labelOf),
    revision: record.revision,
    data: writeStoredRecord(record),
  };
  const changed = turn.expected === 'new' ? statements.insert(row) : statements.update(row, turn.expected);
  if (changed === 0) return 'conflict';
  if (message) statements.keepReply(message.channel, message.id, record, writeStoredReply(message.reply));
  return 'saved';
}

function removeWalk(statements: Statements, id: WalkId): boolean {
  statements.removeReplies(id);
  return statements.removeWalk(id) > 0;
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

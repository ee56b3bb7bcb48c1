import type Database from 'libsql';
import * as z from 'zod';
import type { WalkSummary } from '../../conversation/ports.ts';
import type { WalkId } from '../../conversation/record.ts';

const WalkRow = z.object({
  id: z.string(),
  started_at: z.string(),
  updated_at: z.string(),
  // A line of the list is shown even when something in it is not known, so that the walk can be found.
  phase: z.enum(['asking', 'readBack', 'finished', 'emergency', 'paused']).catch('paused'),
  answered: z.number().int().catch(0),
  label: z.string().nullable(),
});
export type WalkRow = z.infer<typeof WalkRow>;

const ReplyRow = z.object({ walk_id: z.string(), reply: z.string() });
type ReplyRow = z.infer<typeof ReplyRow>;

/** What is written of a walk: its line in the list, its revision, and everything as JSON text. */
export interface WalkToWrite {
  readonly summary: WalkSummary;
  readonly revision: number;
  readonly data: string;
}

/** The prepared statements, as functions; counts are of changed rows. */
export interface Statements {
  readonly walkData: (id: WalkId) => string | undefined;
  readonly insert: (walk: WalkToWrite) => number;
  /** Writes only over this revision. */
  readonly update: (walk: WalkToWrite, expected: number) => number;
  readonly list: () => readonly WalkRow[];
  readonly removeWalk: (id: WalkId) => number;
  readonly removeReplies: (id: WalkId) => number;
  /** Walks that nobody changed since then, with their replies. */
  readonly removeWalksBefore: (updatedAt: string) => number;
  readonly removeRepliesBefore: (keptAt: string) => number;
  readonly reply: (channel: string, messageId: string) => ReplyRow | undefined;
  /** With an empty `walk`, the reply stays when the walk is erased. */
  readonly keepReply: (
    channel: string,
    messageId: string,
    kept: { walk: string; at: string; reply: string },
  ) => void;
}

/** Prepares every statement once; the tables must be up to date. */
export function prepareStatements(db: Database.Database): Statements {
  return { ...prepareWalkStatements(db), ...prepareReplyStatements(db) };
}

function prepareWalkStatements(db: Database.Database) {
  const walkData = db.prepare('SELECT data FROM walks WHERE id = ?');
  const insert = db.prepare(
    'INSERT INTO walks (id, revision, started_at, updated_at, phase, answered, label, data) ' +
      'VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING',
  );
  const update = db.prepare(
    'UPDATE walks SET revision = ?, started_at = ?, updated_at = ?, phase = ?, answered = ?, label = ?, data = ? ' +
      'WHERE id = ? AND revision = ?',
  );
  const list = db.prepare(
    'SELECT id, started_at, updated_at, phase, answered, label FROM walks ORDER BY updated_at DESC, id ASC',
  );
  const remove = db.prepare('DELETE FROM walks WHERE id = ?');
  const removeBefore = db.prepare('DELETE FROM walks WHERE updated_at < ?');
  const removeRepliesOfOld = db.prepare(
    'DELETE FROM messages WHERE walk_id IN (SELECT id FROM walks WHERE updated_at < ?)',
  );
  const columns = ({ summary, revision, data }: WalkToWrite) =>
    [
      revision,
      summary.startedAt,
      summary.updatedAt,
      summary.phase,
      summary.answered,
      summary.label ?? null,
      data,
    ] as const;
  return {
    walkData: (id: WalkId) => (walkData.all(id)[0] as { data: string } | undefined)?.data,
    insert: (walk: WalkToWrite) => insert.run(walk.summary.id, ...columns(walk)).changes,
    update: (walk: WalkToWrite, expected: number) =>
      update.run(...columns(walk), walk.summary.id, expected).changes,
    list: () => z.array(WalkRow).parse(list.all()),
    removeWalk: (id: WalkId) => remove.run(id).changes,
    removeWalksBefore: (updatedAt: string) => {
      removeRepliesOfOld.run(updatedAt);
      return removeBefore.run(updatedAt).changes;
    },
  };
}

function prepareReplyStatements(db: Database.Database) {
  const reply = db.prepare('SELECT walk_id, reply FROM messages WHERE channel = ? AND message_id = ?');
  const keep = db.prepare(
    'INSERT INTO messages (channel, message_id, walk_id, reply, kept_at) VALUES (?, ?, ?, ?, ?)',
  );
  const remove = db.prepare('DELETE FROM messages WHERE walk_id = ?');
  const removeBefore = db.prepare('DELETE FROM messages WHERE kept_at < ?');
  return {
    reply: (channel: string, messageId: string) =>
      ReplyRow.optional().parse(reply.all(channel, messageId)[0]),
    keepReply: (channel: string, messageId: string, kept: { walk: string; at: string; reply: string }) => {
      keep.run(channel, messageId, kept.walk, kept.reply, kept.at);
    },
    removeRepliesBefore: (keptAt: string) => removeBefore.run(keptAt).changes,
    removeReplies: (id: WalkId) => remove.run(id).changes,
  };
}

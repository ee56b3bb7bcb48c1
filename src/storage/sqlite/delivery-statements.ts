import type Database from 'libsql';
import type { Announcement, Delivery, DeliveryOutcome } from '../../conversation/ports.ts';
import { readDeliveryRow } from '../stored-delivery.ts';

/** The statements of the outbox, as functions; counts are of changed rows. */
export interface DeliveryStatements {
  readonly add: (announcement: Announcement) => void;
  readonly due: (now: string, limit: number) => readonly Delivery[];
  readonly claim: (delivery: Delivery, until: string) => number;
  readonly settle: (id: string, outcome: DeliveryOutcome) => void;
  readonly list: (state: Delivery['state'], limit: number) => readonly Delivery[];
  readonly resend: (id: string, now: string) => number;
  readonly removeOf: (walk: string) => void;
  readonly removeOfWalksBefore: (updatedAt: string) => void;
  readonly removeSentBefore: (at: string) => void;
}

const columns = 'id, walk_id, revision, at, state, attempts, due_at, problem';

/** Prepares every statement of the outbox once; the tables must be up to date. */
export function prepareDeliveryStatements(db: Database.Database): DeliveryStatements {
  const add = db.prepare(
    `INSERT INTO deliveries (${columns}) VALUES (?, ?, ?, ?, 'waiting', 0, ?, NULL) ON CONFLICT (id) DO NOTHING`,
  );
  const due = db.prepare(
    `SELECT ${columns} FROM deliveries WHERE state = 'waiting' AND due_at <= ? ORDER BY due_at, id LIMIT ?`,
  );
  const claim = db.prepare(
    "UPDATE deliveries SET due_at = ? WHERE id = ? AND state = 'waiting' AND due_at = ?",
  );
  const settle = db.prepare(
    'UPDATE deliveries SET state = ?, attempts = attempts + 1, due_at = COALESCE(?, due_at), problem = ? WHERE id = ?',
  );
  const list = db.prepare(`SELECT ${columns} FROM deliveries WHERE state = ? ORDER BY at DESC, id LIMIT ?`);
  const resend = db.prepare(
    "UPDATE deliveries SET state = 'waiting', attempts = 0, due_at = ?, problem = NULL WHERE id = ? AND state = 'dead'",
  );
  const removeOf = db.prepare('DELETE FROM deliveries WHERE walk_id = ?');
  const removeOfOld = db.prepare(
    'DELETE FROM deliveries WHERE walk_id IN (SELECT id FROM walks WHERE updated_at < ?)',
  );
  const removeSent = db.prepare("DELETE FROM deliveries WHERE state = 'sent' AND at < ?");
  return {
    add: ({ id, walk, revision, at }) => void add.run(id, walk, revision, at, at),
    due: (now, limit) => due.all(now, limit).map(readDeliveryRow),
    claim: ({ id, dueAt }, until) => claim.run(until, id, dueAt).changes,
    settle: (id, outcome) => {
      const dueAt = outcome.state === 'waiting' ? outcome.dueAt : null;
      settle.run(outcome.state, dueAt, outcome.state === 'sent' ? null : outcome.problem, id);
    },
    list: (state, limit) => list.all(state, limit).map(readDeliveryRow),
    resend: (id, now) => resend.run(now, id).changes,
    removeOf: (walk) => void removeOf.run(walk),
    removeOfWalksBefore: (updatedAt) => void removeOfOld.run(updatedAt),
    removeSentBefore: (at) => void removeSent.run(at),
  };
}

import type Database from 'libsql';
import type { WaitingWalk } from '../../conversation/ports.ts';

/** The statements of waiting walks, as functions; counts are of changed rows. */
export interface HandOverStatements {
  readonly add: (waiting: WaitingWalk) => number;
  readonly walkOf: (code: string) => string | undefined;
  readonly untaken: (walk: string) => readonly string[];
  readonly renew: (code: string, sealed: string) => void;
  /** What waits, still untaken. */
  readonly waiting: (code: string, now: string) => string | undefined;
  readonly take: (code: string, by: string, now: string, again: string) => string | undefined;
  /** Nothing of what was taken stays but that it was. */
  readonly takeForGood: (code: string, now: string) => number;
  readonly removeOf: (walk: string) => void;
  readonly removeOfWalksBefore: (updatedAt: string) => void;
  readonly removeBefore: (until: string) => void;
}

/** Prepares every statement of waiting walks once; the tables must be up to date. */
export function prepareHandOverStatements(db: Database.Database): HandOverStatements {
  const add = db.prepare(
    'INSERT INTO hand_overs (code, walk_id, until, sealed) VALUES (?, ?, ?, ?) ' +
      'ON CONFLICT (code) DO UPDATE SET until = excluded.until, sealed = excluded.sealed ' +
      'WHERE hand_overs.walk_id = excluded.walk_id AND hand_overs.taken_by IS NULL',
  );
  const untaken = db.prepare('SELECT code FROM hand_overs WHERE walk_id = ? AND taken_by IS NULL');
  const renew = db.prepare('UPDATE hand_overs SET sealed = ? WHERE code = ? AND taken_by IS NULL');
  const walkOf = db.prepare('SELECT walk_id FROM hand_overs WHERE code = ?');
  const waiting = db.prepare(
    'SELECT sealed FROM hand_overs WHERE code = ? AND until > ? AND taken_by IS NULL',
  );
  const take = db.prepare(
    'UPDATE hand_overs SET taken_by = ?, until = CASE WHEN until < ? THEN until ELSE ? END ' +
      'WHERE code = ? AND until > ? AND (taken_by IS NULL OR taken_by = ?)',
  );
  const sealed = db.prepare('SELECT sealed FROM hand_overs WHERE code = ?');
  const takeForGood = db.prepare(
    "UPDATE hand_overs SET taken_by = '', sealed = '' WHERE code = ? AND until > ? AND taken_by IS NULL",
  );
  const removeOf = db.prepare('DELETE FROM hand_overs WHERE walk_id = ?');
  const removeOfOld = db.prepare(
    'DELETE FROM hand_overs WHERE walk_id IN (SELECT id FROM walks WHERE updated_at < ?)',
  );
  const removeBefore = db.prepare('DELETE FROM hand_overs WHERE until < ?');
  const sealedIn = (rows: unknown[]) => (rows[0] as { sealed: string } | undefined)?.sealed;
  return {
    add: ({ code, walk, until, sealed: text }) => add.run(code, walk, until, text).changes,
    walkOf: (code) => (walkOf.all(code)[0] as { walk_id: string } | undefined)?.walk_id,
    untaken: (walk) => (untaken.all(walk) as { code: string }[]).map((row) => row.code),
    renew: (code, text) => void renew.run(text, code),
    waiting: (code, now) => sealedIn(waiting.all(code, now)),
    take: (code, by, now, again) =>
      take.run(by, again, again, code, now, by).changes > 0 ? sealedIn(sealed.all(code)) : undefined,
    takeForGood: (code, now) => takeForGood.run(code, now).changes,
    removeOf: (walk) => void removeOf.run(walk),
    removeOfWalksBefore: (updatedAt) => void removeOfOld.run(updatedAt),
    removeBefore: (until) => void removeBefore.run(until),
  };
}

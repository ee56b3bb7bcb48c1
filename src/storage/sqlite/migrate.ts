import type Database from 'libsql';
import { StorageError } from '../storage-error.ts';
import type { Migration } from './migrations.ts';

/**
 * Brings the tables up to date. Each step and its number are written in one transaction under the write
 * lock, so that several programs may start at once and a step that was cut short starts again.
 */
export function migrate(db: Database.Database, file: string, steps: readonly Migration[]): void {
  db.exec(
    'CREATE TABLE IF NOT EXISTS migrations (number INTEGER PRIMARY KEY, name TEXT NOT NULL) WITHOUT ROWID',
  );
  refuseNewer(db, file, steps.at(-1)?.number ?? 0);
  for (const step of steps) applyStep(db, file, step);
}

function refuseNewer(db: Database.Database, file: string, newestKnown: number): void {
  const row = db.prepare('SELECT MAX(number) AS newest FROM migrations').all()[0] as {
    newest: number | null;
  };
  if (row.newest !== null && row.newest > newestKnown) {
    throw new StorageError(
      'newerStore',
      file,
      `${file} was written by a newer roofdown (tables ${row.newest}, this one knows ${newestKnown}). ` +
        'Use the newer one; nothing was changed.',
    );
  }
}

function applyStep(db: Database.Database, file: string, step: Migration): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    const done = db.prepare('SELECT number FROM migrations WHERE number = ?').all(step.number).length > 0;
    if (!done) {
      db.exec(step.sql);
      db.prepare('INSERT INTO migrations (number, name) VALUES (?, ?)').run(step.number, step.name);
    }
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw new StorageError(
      'migrationFailed',
      file,
      `The tables of ${file} could not be brought up to date (step ${step.number}, ${step.name}): ` +
        `${error instanceof Error ? error.message : String(error)}. Nothing was changed.`,
      error,
    );
  }
}

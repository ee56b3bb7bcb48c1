import type Database from 'libsql';
import { StorageError } from '../storage-error.ts';

/** Runs work in the next group transaction; resolves after its COMMIT, rejects when it was not kept. */
export interface GroupCommit {
  readonly run: <T>(work: () => T) => Promise<T>;
  /** Writes what is waiting now, and refuses all that comes later. */
  readonly finish: () => void;
}

interface Waiting {
  readonly work: () => unknown;
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: unknown) => void;
}

type Outcome =
  | { readonly kept: true; readonly value: unknown }
  | { readonly kept: false; readonly error: unknown };

/**
 * All writes of one turn of the event loop in one transaction: one wait for the disk instead of one each.
 * Each stands in a savepoint of its own, so that one that fails takes no other with it.
 */
export function createGroupCommit(db: Database.Database): GroupCommit {
  let queue: Waiting[] = [];
  let finished = false;

  const flush = (): void => {
    const group = queue;
    queue = [];
    if (group.length > 0) commitGroup(db, group);
  };

  const run = <T>(work: () => T): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      if (finished) {
        reject(new StorageError('closed', 'store', 'The store is closed already.'));
        return;
      }
      if (queue.length === 0) setImmediate(flush);
      queue.push({ work, resolve: resolve as (value: unknown) => void, reject });
    });

  return {
    run,
    finish: () => {
      finished = true;
      flush();
    },
  };
}

function commitGroup(db: Database.Database, group: readonly Waiting[]): void {
  let outcomes: readonly Outcome[];
  try {
    db.exec('BEGIN IMMEDIATE');
    outcomes = group.map((waiting) => runInSavepoint(db, waiting.work));
    db.exec('COMMIT');
  } catch (error) {
    rollBack(db);
    for (const waiting of group) waiting.reject(error);
    return;
  }
  group.forEach((waiting, index) => {
    const outcome = outcomes[index];
    if (outcome?.kept) waiting.resolve(outcome.value);
    else waiting.reject(outcome?.error);
  });
}

function runInSavepoint(db: Database.Database, work: () => unknown): Outcome {
  db.exec('SAVEPOINT turn');
  try {
    const value = work();
    db.exec('RELEASE turn');
    return { kept: true, value };
  } catch (error) {
    // When this fails too, the whole transaction is gone and the group is told so.
    db.exec('ROLLBACK TO turn');
    db.exec('RELEASE turn');
    return { kept: false, error };
  }
}

function rollBack(db: Database.Database): void {
  try {
    if (db.inTransaction) db.exec('ROLLBACK');
  } catch {
    // The first error is the one to tell; an open transaction is rolled back by the next start.
  }
}

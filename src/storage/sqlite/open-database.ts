import Database from 'libsql';
import { StorageError } from '../storage-error.ts';

/** How long a write waits for another program before it gives up. */
export const busyTimeoutMilliseconds = 5_000;

const settings: readonly { readonly name: string; readonly set: string; readonly expect: string | number }[] =
  [
    { name: 'busy_timeout', set: String(busyTimeoutMilliseconds), expect: busyTimeoutMilliseconds },
    { name: 'journal_mode', set: 'WAL', expect: 'wal' },
    // 2 is FULL: a commit that returned is on the disk, even after a power cut.
    { name: 'synchronous', set: 'FULL', expect: 2 },
    // What is erased is overwritten, not only unlinked.
    { name: 'secure_delete', set: 'ON', expect: 1 },
  ];

/**
 * Opens a database file, sets write-ahead log, full synchronisation and the waiting time, and reads each back.
 * Throws a StorageError when the file cannot be opened or a setting was not taken.
 */
export function openDatabase(file: string): Database.Database {
  const db = open(file);
  try {
    for (const setting of settings) applySetting(db, file, setting);
    return db;
  } catch (error) {
    db.close();
    if (error instanceof StorageError) throw error;
    throw cannotOpen(file, error);
  }
}

function open(file: string): Database.Database {
  try {
    return new Database(file);
  } catch (error) {
    throw cannotOpen(file, error);
  }
}

function applySetting(db: Database.Database, file: string, setting: (typeof settings)[number]): void {
  setWithPatience(db, `PRAGMA ${setting.name} = ${setting.set}`);
  const row = db.prepare(`PRAGMA ${setting.name}`).all()[0] as Record<string, string | number>;
  const value = Object.values(row)[0];
  if (value !== setting.expect) {
    throw new StorageError(
      'settingRefused',
      file,
      `${file} did not take ${setting.name} = ${setting.set} (it says ${value}), so answers would not be safe ` +
        'there. Choose a data folder on a local disk (XDG_DATA_HOME).',
    );
  }
}

/** The switch to the write-ahead log does not wait by itself while another program makes the same switch. */
function setWithPatience(db: Database.Database, sql: string): void {
  for (let attempt = 1; ; attempt += 1) {
    try {
      db.prepare(sql).all();
      return;
    } catch (error) {
      const busy = (error as { code?: string }).code?.startsWith('SQLITE_BUSY') ?? false;
      if (!busy || attempt >= 50) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

function cannotOpen(file: string, error: unknown): StorageError {
  const reason = error instanceof Error ? error.message : String(error);
  return new StorageError('cannotOpen', file, `${file} cannot be opened: ${reason}.`, error);
}

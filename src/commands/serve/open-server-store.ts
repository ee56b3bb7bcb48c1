import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import type { Checklist } from '../../assess/checklist.ts';
import type { ServerStore } from '../../conversation/ports.ts';
import { prepareDataFolder } from '../../storage/data-folder.ts';
import { createSqliteStore } from '../../storage/sqlite/sqlite-store.ts';
import type { CommandIo } from '../io.ts';
import { labelOf } from '../label.ts';
import { ProgramError } from '../program-error.ts';
import type { ServeSettings } from './read-settings.ts';

function databaseFile(settings: ServeSettings, io: CommandIo): string {
  if (settings.ROOFDOWN_DATABASE_FILE !== undefined) return settings.ROOFDOWN_DATABASE_FILE;
  const folder = prepareDataFolder({ env: io.env, home: io.home });
  if (folder.kind === 'unusable') throw new ProgramError(folder.message, 1);
  // Its own file: what the server removes after a time must never be a walk of the terminal.
  const file = join(folder.folder, 'server.sqlite');
  closeSync(openSync(file, 'a', 0o600));
  return file;
}

/** Opens the store that the settings name: PostgreSQL, or SQLite in a file or in the data folder. */
export async function openServerStore(
  settings: ServeSettings,
  io: CommandIo,
  checklist: Checklist,
): Promise<ServerStore> {
  const label = (record: Parameters<Parameters<typeof createSqliteStore>[0]['labelOf'] & object>[0]) =>
    labelOf(checklist, record.sheet);
  if (settings.ROOFDOWN_DATABASE_URL === undefined)
    return createSqliteStore({ file: databaseFile(settings, io), labelOf: label });
  const { createPostgresStore } = await import('../../storage/postgres/postgres-store.ts');
  const { ROOFDOWN_DATABASE_URL: url, ROOFDOWN_DATABASE_POOL: connections } = settings;
  return createPostgresStore({ url, connections, labelOf: label });
}

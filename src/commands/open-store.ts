import type { Checklist } from '../assess/checklist.ts';
import type { WalkStore } from '../conversation/ports.ts';
import { prepareDataFolder } from '../storage/data-folder.ts';
import { createSqliteStore } from '../storage/sqlite/sqlite-store.ts';
import type { CommandIo } from './io.ts';
import { labelOf } from './label.ts';
import { ProgramError } from './program-error.ts';

/** The store of this user's walks; one that cannot be used is said plainly, before a question is asked. */
export function openStore(io: CommandIo, checklist: Checklist): WalkStore {
  const folder = prepareDataFolder({ env: io.env, home: io.home });
  if (folder.kind === 'unusable') throw new ProgramError(folder.message, 1);
  return createSqliteStore({
    file: folder.databaseFile,
    labelOf: (record) => labelOf(checklist, record.sheet),
  });
}

import { join } from 'node:path';
import { createSqliteStore } from '../../src/storage/sqlite/sqlite-store.ts';
import { describeCrashes } from './crash-contract.ts';

describeCrashes('SQLite', async (folder) => {
  const file = join(folder, 'server.sqlite');
  return { settings: { ROOFDOWN_DATABASE_FILE: file }, open: async () => createSqliteStore({ file }) };
});

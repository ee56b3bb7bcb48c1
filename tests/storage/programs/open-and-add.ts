import { createSqliteStore } from '../../../src/storage/sqlite/sqlite-store.ts';
import { walk } from '../walks.ts';

// Opens a file that may not be there yet, adds one walk and ends.
const [file, id] = process.argv.slice(2);
const store = createSqliteStore({ file: file ?? '' });
process.stdout.write(await store.commit({ record: walk(id ?? ''), expected: 'new' }));
await store.close();

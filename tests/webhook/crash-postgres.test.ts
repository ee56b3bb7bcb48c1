import { afterAll } from 'vitest';
import { createPostgresStore } from '../../src/storage/postgres/postgres-store.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { describeCrashes } from './crash-contract.ts';

let postgres: TestPostgres | undefined;
afterAll(() => postgres?.stop(), 30_000);

describeCrashes('PostgreSQL', async () => {
  postgres = await startPostgres();
  const url = await postgres.newDatabase();
  return { settings: { ROOFDOWN_DATABASE_URL: url }, open: () => createPostgresStore({ url }) };
});

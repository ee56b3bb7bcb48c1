import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FlowFolders } from './files/load-flow.ts';

/** The project's root: both `src/settings.ts` and the built `.build/*.mjs` stand one folder below it. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Where the program finds its own files. */
export const folders: FlowFolders = { root, flows: join(root, 'flows'), built: join(root, '.build') };

/** The version, as in package.json. */
export const version = '0.1.0';

/** The seed of everything drawn at random, so that a report can be made again to the letter. */
export const seed = 20260701;

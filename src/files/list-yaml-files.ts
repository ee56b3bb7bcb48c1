import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** What a trainee practises with: files of another shape, with a reader of their own. */
const practice = /^practice(?:\/|\\)/;

/** Every `.yaml` flow file below a folder, sorted by path. */
export function listYamlFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ya?ml$/.test(name) && !practice.test(name))
    .map((name) => join(folder, name))
    .sort();
}

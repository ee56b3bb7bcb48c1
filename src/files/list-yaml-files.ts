import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Every `.yaml` file below a folder, sorted by path. */
export function listYamlFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ya?ml$/.test(name))
    .map((name) => join(folder, name))
    .sort();
}

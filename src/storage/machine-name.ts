import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * A random name of this data folder, made once and kept in it: with it a request that is sent again, also after the
 * program was ended, is known as the same. Where it cannot be kept, a new one.
 */
export function machineName(folder: string): string {
  const file = join(folder, 'name');
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    const name = randomUUID();
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      writeFileSync(file, `${name}\n`, { mode: 0o600, flag: 'wx' });
    } catch {
      // Without it a request that got no answer is only known as the same until the program ends.
    }
    return name;
  }
}

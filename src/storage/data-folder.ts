import { accessSync, closeSync, constants, mkdirSync, openSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';

/** Where walks are kept on this machine, ready for use, or why it cannot be used. */
export type DataFolder =
  | { readonly kind: 'ready'; readonly folder: string; readonly databaseFile: string }
  | { readonly kind: 'unusable'; readonly folder: string; readonly message: string };

/** The part of the environment that says where; `home` is the home folder of the user. */
export interface DataFolderPlace {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/**
 * The folder for walks after the XDG Base Directory Specification 0.8: `$XDG_DATA_HOME/roofdown`, or
 * `~/.local/share/roofdown` when that is unset, empty or not an absolute path.
 */
export function dataFolderPath({ env, home }: DataFolderPlace): string {
  const base = env.XDG_DATA_HOME;
  const usable = base !== undefined && isAbsolute(base);
  return join(usable ? base : join(home, '.local', 'share'), 'roofdown');
}

/** Makes the folder (mode 0700) and the database file (mode 0600), for nobody but the user. */
export function prepareDataFolder(place: DataFolderPlace): DataFolder {
  const folder = dataFolderPath(place);
  const databaseFile = join(folder, 'walks.sqlite');
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    accessSync(folder, constants.W_OK | constants.X_OK);
    closeSync(openSync(databaseFile, 'a', 0o600));
    return { kind: 'ready', folder, databaseFile };
  } catch (error) {
    return { kind: 'unusable', folder, message: describe(folder, error) };
  }
}

function describe(folder: string, error: unknown): string {
  const reason = error instanceof Error ? error.message : String(error);
  return (
    `Answers cannot be kept in ${folder} (${reason}). ` +
    'Make that folder writable, or set XDG_DATA_HOME to a folder that is.'
  );
}

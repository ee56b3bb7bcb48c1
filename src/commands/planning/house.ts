import { existsSync } from 'node:fs';
import type { WalkStore } from '../../conversation/ports.ts';
import type { Programme } from '../../conversation/programme.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { findWalk } from '../find-walk.ts';
import { walkFromFile } from '../headless.ts';
import type { CommandIo } from '../io.ts';
import { openStore } from '../open-store.ts';
import { ProgramError } from '../program-error.ts';
import type { ReaderOptions } from '../reader-options.ts';

/** Opens the store for as long as it is used. */
export async function withStore<T>(
  io: CommandIo,
  programme: Programme,
  use: (store: WalkStore) => Promise<T>,
): Promise<T> {
  const store = openStore(io, programme.checklist);
  try {
    return await use(store);
  } finally {
    await store.close();
  }
}

/** A kept walk by the beginning of its id; without one the newest. */
export async function loadWalk(store: WalkStore, typed: string | undefined): Promise<WalkRecord> {
  const newest = typed === undefined ? (await store.list())[0] : undefined;
  if (typed === undefined && !newest)
    throw new ProgramError('No walk is kept here yet. "roofdown walk" begins one.');
  const { id } = newest ?? (await findWalk(store, typed ?? ''));
  const record = await store.load(id);
  if (!record) throw new ProgramError(`The walk ${id} is gone.`);
  return record;
}

/** A house by the path of an answer file or the beginning of the id of a walk; the walk itself is only read. */
export async function loadHouse(
  io: CommandIo,
  programme: Programme,
  named: string | undefined,
  reader: ReaderOptions = {},
): Promise<WalkRecord> {
  const isFile = named !== undefined && (named === '-' || existsSync(named));
  if (isFile) return walkFromFile(io, programme, named, reader);
  if (named !== undefined && /\.(?:ya?ml|json)$/.test(named)) {
    throw new ProgramError(
      `There is no file "${named}". Give the path of an answer file, or the id of a walk.`,
    );
  }
  return withStore(io, programme, (store) => loadWalk(store, named));
}

import type { WalkStore, WalkSummary } from '../conversation/ports.ts';
import { ProgramError } from './program-error.ts';

/** The walk whose id begins with what was typed; an unknown or ambiguous beginning is a mistake with a way out. */
export async function findWalk(store: WalkStore, typed: string): Promise<WalkSummary> {
  const list = await store.list();
  const found = list.filter((one) => one.id.startsWith(typed));
  const [only] = found;
  if (only && found.length === 1) return only;
  const hint = 'See "roofdown walks list" for the ids.';
  if (found.length > 1)
    throw new ProgramError(`"${typed}" fits ${found.length} walks. Type more of the id. ${hint}`);
  throw new ProgramError(`No walk has an id that begins with "${typed}". ${hint}`);
}

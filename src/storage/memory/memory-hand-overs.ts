import type { HandOverStore, WaitingWalk } from '../../conversation/ports.ts';
import type { WalkId } from '../../conversation/record.ts';

/** Waiting walks in memory, with the writes that belong to a turn. */
export interface MemoryHandOvers extends HandOverStore {
  readonly isWaiting: (code: string, now: string) => boolean;
  /** Nothing of what was taken stays but that it was. */
  readonly takeForGood: (code: string) => void;
  readonly removeOf: (walk: WalkId) => void;
  readonly removeBefore: (until: string) => void;
}

/** Waiting walks that are forgotten when the program ends. */
export function createMemoryHandOvers(): MemoryHandOvers {
  const rows = new Map<string, WaitingWalk & { readonly takenBy?: string }>();
  const untaken = (code: string, now: string) => {
    const row = rows.get(code);
    return row && row.takenBy === undefined && row.until > now ? row : undefined;
  };
  const forget = (which: (one: WaitingWalk) => boolean) => {
    for (const [code, row] of rows) if (which(row)) rows.delete(code);
  };
  return {
    leave: async (waiting) => {
      const before = rows.get(waiting.code);
      if (before && before.walk !== waiting.walk) return 'other';
      if (before?.takenBy !== undefined) return 'taken';
      rows.set(waiting.code, waiting);
      return 'left';
    },
    untaken: async (walk) =>
      [...rows.values()]
        .filter((one) => one.walk === walk && one.takenBy === undefined)
        .map((one) => one.code),
    renew: async (code, sealed) => {
      const row = rows.get(code);
      if (row && row.takenBy === undefined) rows.set(code, { ...row, sealed });
    },
    withdraw: async (walk) => forget((one) => one.walk === walk),
    waiting: async (code, now) => untaken(code, now)?.sealed,
    take: async (code, { by, now, again }) => {
      const row = rows.get(code);
      if (!row || row.until <= now || (row.takenBy ?? by) !== by) return undefined;
      const [until = again] = [row.until, again].sort();
      rows.set(code, { ...row, takenBy: by, until });
      return row.sealed;
    },
    isWaiting: (code, now) => untaken(code, now) !== undefined,
    takeForGood: (code) => {
      const row = rows.get(code);
      if (row) rows.set(code, { ...row, takenBy: '', sealed: '' });
    },
    removeOf: (walk) => forget((one) => one.walk === walk),
    removeBefore: (until) => forget((one) => one.until < until),
  };
}

/** Runs the work of one walk after the other, different walks side by side. */
export type WalkQueue = <T>(walk: string, work: () => Promise<T>) => Promise<T>;

/**
 * Makes a queue for this process. It only spares needless conflicts: what keeps two processes apart is the
 * store's comparison of revisions.
 */
export function createWalkQueue(): WalkQueue {
  const last = new Map<string, Promise<unknown>>();
  return async (walk, work) => {
    const before = last.get(walk);
    const mine = before === undefined ? work() : before.then(work, work);
    last.set(walk, mine);
    try {
      return await mine;
    } finally {
      if (last.get(walk) === mine) last.delete(walk);
    }
  };
}

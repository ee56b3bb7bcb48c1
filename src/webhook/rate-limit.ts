/** What a limit says to one more: `first` is the first that is over, so that it can be told once. */
export type Limited = 'within' | 'first' | 'over';

/** Most keys that are remembered; beyond it the oldest are forgotten, which only lets them through. */
const most = 100_000;

/**
 * A bucket for each key that holds `perMinute` and fills evenly: in this process only, so that each of several
 * processes allows as much.
 */
export function createRateLimit(perMinute: number, clock: () => Date): (key: string) => Limited {
  const buckets = new Map<string, { left: number; at: number; told: boolean }>();
  return (key) => {
    const now = clock().getTime();
    const before = buckets.get(key) ?? { left: perMinute, at: now, told: false };
    const filled = Math.min(perMinute, before.left + (Math.max(0, now - before.at) / 60_000) * perMinute);
    buckets.delete(key);
    const within = filled >= 1;
    buckets.set(key, { left: within ? filled - 1 : filled, at: now, told: !within });
    if (buckets.size > most) buckets.delete(buckets.keys().next().value ?? key);
    if (within) return 'within';
    return before.told ? 'over' : 'first';
  };
}

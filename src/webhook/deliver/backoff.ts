/** Seconds to wait after each failed attempt; after the last one a delivery is dead. About two and a half days in all. */
export const waitsSeconds: readonly number[] = [5, 60, 300, 1800, 7200, 18_000, 36_000, 50_400, 72_000];

/** When to try again after a number of failed attempts; nothing when it is given up. */
export function nextAttempt(failures: number, now: Date): Date | undefined {
  const wait = waitsSeconds[failures - 1];
  return wait === undefined ? undefined : new Date(now.getTime() + wait * 1000);
}

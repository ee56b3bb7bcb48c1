/** The middle of a list of numbers. */
export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/**
 * Measures several things in turn, round after round, so that a slow moment of the machine meets all of them;
 * gives the middle of the milliseconds of each. The first rounds only warm up.
 */
export async function inTurns(
  things: Readonly<Record<string, () => number | Promise<number>>>,
  { warm, rounds }: { readonly warm: number; readonly rounds: number },
): Promise<Record<string, number>> {
  const times: Record<string, number[]> = {};
  for (let round = 0; round < warm + rounds; round++) {
    for (const [name, run] of Object.entries(things)) {
      const milliseconds = await run();
      if (round >= warm) times[name] = [...(times[name] ?? []), milliseconds];
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, all]) => [name, median(all)]));
}

/** The milliseconds that something takes. */
export function timed(run: () => unknown): number {
  const started = performance.now();
  run();
  return performance.now() - started;
}

/** One line: what was measured against what was wanted. */
export function sayRatio(what: string, ratio: number, wanted: string, met: boolean): void {
  console.log(`${met ? 'met    ' : 'NOT MET'} ${what}: ${ratio.toFixed(2)} (wanted: ${wanted})`);
}

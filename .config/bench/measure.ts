/** The lower quartile of a list of numbers: on a machine with other work, the part of a measurement that tells. */
export function lowerQuartile(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 4)] ?? Number.NaN;
}

/**
 * Measures several things in turn, round after round, so that a slow moment of the machine meets all of them;
 * gives the lower quartile of the milliseconds of each. The first rounds only warm up.
 */
export async function inTurns<Name extends string>(
  things: Readonly<Record<Name, () => number | Promise<number>>>,
  { warm, rounds }: { readonly warm: number; readonly rounds: number },
): Promise<Record<Name, number>> {
  const names = Object.keys(things) as Name[];
  const times = new Map<Name, number[]>(names.map((name) => [name, []]));
  for (let round = 0; round < warm + rounds; round++) {
    for (const name of names) {
      const milliseconds = await things[name]();
      if (round >= warm) times.get(name)?.push(milliseconds);
    }
  }
  return Object.fromEntries(names.map((name) => [name, lowerQuartile(times.get(name) ?? [])])) as Record<Name, number>;
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

/** Gives numbers in [0, 1), the same ones for the same seed. */
export type Random = () => number;

/**
 * A small fast generator with a seed: sfc32 ("small fast counting", 32 bits) by Chris Doty-Humphrey, PractRand,
 * public domain; three words of state and a counter, mixed for 12 rounds after seeding as its author advises.
 */
export function seededRandom(seed: number): Random {
  let a = 0;
  let b = seed | 0;
  let c = Math.floor(seed / 2 ** 32) | 0;
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  for (let round = 0; round < 12; round++) next();
  return () => next() / 2 ** 32;
}

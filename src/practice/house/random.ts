/** A number in [0, 1), another at each call. */
export type Random = () => number;

/** Seeded random numbers: the same seed gives the same row (mulberry32, by Tommy Ettinger, public domain). */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** One of a list by weights; nothing for an empty list or weights of nothing. */
export function drawOne<T>(random: Random, list: readonly (readonly [T, number])[]): T | undefined {
  const total = list.reduce((sum, [, weight]) => sum + weight, 0);
  let left = random() * total;
  for (const [item, weight] of list) {
    left -= weight;
    if (left < 0 && weight > 0) return item;
  }
  return list.findLast(([, weight]) => weight > 0)?.[0];
}

/** Some of a list, each at most once, in the order of the list. */
export function drawSome<T>(random: Random, list: readonly T[], count: number): T[] {
  const left = [...list];
  const taken = new Set<T>();
  while (taken.size < count && left.length > 0) {
    const [one] = left.splice(Math.floor(random() * left.length), 1);
    if (one !== undefined) taken.add(one);
  }
  return list.filter((one) => taken.has(one));
}

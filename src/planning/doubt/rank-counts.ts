/** How often each of some things stood at each rank. */
export interface RankCounts {
  readonly count: number;
  /** counts[thing * (count + 1) + rank]; rank 0 where it was not in the list. */
  readonly counts: Int32Array;
  /** ahead[one]: draws in which it came before its neighbour behind it in the list as it is. */
  readonly ahead: Int32Array;
  readonly neighbour: Int32Array;
  /** Positions in the order of the last draw: the next one differs little. */
  readonly order: Int32Array;
  readonly place: Int32Array;
}

/** Nothing counted yet; `order` is the order to begin with. */
export function rankCounts(order: readonly number[]): RankCounts {
  const count = order.length;
  const neighbour = new Int32Array(count).fill(-1);
  order.forEach((one, at) => {
    neighbour[one] = order[at + 1] ?? -1;
  });
  return {
    count,
    counts: new Int32Array(count * (count + 1)),
    ahead: new Int32Array(count),
    neighbour,
    place: new Int32Array(count),
    order: Int32Array.from(order),
  };
}

/** Sorts by share, then by what is taken off alone, then by the place in the list as it is; in place, best first. */
export function sortByShare(
  order: Int32Array,
  share: Float64Array,
  alone: Float64Array,
  place: Int32Array,
): void {
  for (let at = 1; at < order.length; at++) {
    const one = order[at] ?? 0;
    let to = at;
    while (to > 0) {
      const other = order[to - 1] ?? 0;
      const byShare = (share[one] ?? 0) - (share[other] ?? 0);
      const byAlone = (alone[one] ?? 0) - (alone[other] ?? 0);
      const ahead =
        Math.abs(byShare) > 1e-12
          ? byShare > 0
          : Math.abs(byAlone) > 1e-12
            ? byAlone > 0
            : (place[one] ?? 0) < (place[other] ?? 0);
      if (!ahead) break;
      order[to] = other;
      to--;
    }
    order[to] = one;
  }
}

/** Counts the order as it stands; things that are not listed have no rank, and come behind all that are. */
export function countRanks(
  { count, counts, order, ahead, neighbour, place }: RankCounts,
  listed: Uint8Array,
): void {
  let rank = 0;
  for (let at = 0; at < count; at++) {
    const one = order[at] ?? 0;
    const here = listed[one] ? ++rank : 0;
    place[one] = here === 0 ? count + 1 : here;
    const cell = one * (count + 1) + here;
    counts[cell] = (counts[cell] ?? 0) + 1;
  }
  for (let one = 0; one < count; one++) {
    const other = neighbour[one] ?? -1;
    if (other >= 0 && (place[one] ?? 0) < (place[other] ?? 0)) ahead[one] = (ahead[one] ?? 0) + 1;
  }
}

/** Where one thing stood over all draws. */
export interface RankRange {
  /** In which part of the draws it stood among the first three. */
  readonly topThree: number;
  /** 5th and 95th percentile of its ranks; one that was not in the list counts as behind all others. */
  readonly from: number;
  readonly to: number;
  /** In which part of the draws it stood in the list at all. */
  readonly listed: number;
}

const firstPlaces = 3;

/** Reads the counts of one thing. */
export function rangeOf({ count, counts }: RankCounts, thing: number, draws: number): RankRange {
  const at = (rank: number) => counts[thing * (count + 1) + rank] ?? 0;
  let top = 0;
  for (let rank = 1; rank <= firstPlaces; rank++) top += at(rank);
  const percentile = (part: number) => {
    let seen = 0;
    for (let rank = 1; rank <= count; rank++) {
      seen += at(rank);
      if (seen >= part * draws - 1e-9) return rank;
    }
    return count;
  };
  return { topThree: top / draws, from: percentile(0.05), to: percentile(0.95), listed: 1 - at(0) / draws };
}

/** Edits (insert, delete, replace, swap of neighbours) that turn one word into the other; `limit + 1` when more. */
export function editDistance(from: string, to: string, limit = 3): number {
  if (Math.abs(from.length - to.length) > limit) return limit + 1;
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let row = 1; row <= from.length; row++) {
    const now = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let best = Math.min(
        (last[column] ?? 0) + 1,
        (now[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) best = Math.min(best, (before[column - 2] ?? 0) + 1);
      now.push(best);
    }
    before = last;
    last = now;
  }
  return Math.min(last[to.length] ?? limit + 1, limit + 1);
}

/** The known word nearest to a misspelt one, or nothing when none is near. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const limit = word.length <= 4 ? 1 : word.length <= 8 ? 2 : 3;
  let best: string | undefined;
  let bestDistance = limit + 1;
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase(), limit);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** `Did you mean "choice"?`, or nothing. */
export function didYouMean(word: string, known: Iterable<string>): string | undefined {
  const found = nearest(word, known);
  return found === undefined ? undefined : `Did you mean "${found}"?`;
}

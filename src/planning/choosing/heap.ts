/** A heap: the item with the highest key on top. Changed by `push` and `pop` only. */
export interface Heap<T> {
  readonly items: { readonly key: number; readonly value: T }[];
}

/** Puts an item in. */
export function push<T>({ items }: Heap<T>, key: number, value: T): void {
  let at = items.length;
  items.push({ key, value });
  while (at > 0) {
    const above = (at - 1) >> 1;
    const [lower, upper] = [items[at], items[above]];
    if (!lower || !upper || upper.key >= lower.key) return;
    items[above] = lower;
    items[at] = upper;
    at = above;
  }
}

/** Takes the item with the highest key out. */
export function pop<T>({ items }: Heap<T>): { readonly key: number; readonly value: T } | undefined {
  const top = items[0];
  const last = items.pop();
  if (items.length === 0 || !last) return top;
  items[0] = last;
  let at = 0;
  for (;;) {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    let most = at;
    if ((items[left]?.key ?? -Infinity) > (items[most]?.key ?? -Infinity)) most = left;
    if ((items[right]?.key ?? -Infinity) > (items[most]?.key ?? -Infinity)) most = right;
    if (most === at) return top;
    const [one, other] = [items[at], items[most]];
    if (one && other) {
      items[at] = other;
      items[most] = one;
    }
    at = most;
  }
}

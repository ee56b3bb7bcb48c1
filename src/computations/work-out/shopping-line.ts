import type { Outside } from '../formulas/outside.ts';
import { packsFor } from '../formulas/supplies.ts';
import type { ShoppingLine } from './computation.ts';
import { whenCovered } from './define-computation.ts';

/** A line of a shopping list, with the whole packs that hold the amount. */
export function shoppingLine(
  item: string,
  label: string,
  dimension: ShoppingLine['dimension'],
  amount: number,
  pack: number,
): ShoppingLine | Outside {
  return whenCovered(
    [packsFor(amount, pack)],
    (count): ShoppingLine => ({ item, label, amount, dimension, pack, count }),
  );
}

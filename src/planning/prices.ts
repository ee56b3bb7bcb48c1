import type { Flow } from '../flow/flow.ts';
import type { Cost } from '../flow/schema/action.ts';

/** A price list of the user's own: it goes over the list that comes with the flow, line by line. */
export interface PriceList {
  readonly currency: string;
  readonly year: number | undefined;
  /** What one unit of the flow's currency costs in this one; 1 where they are the same. */
  readonly rate: number;
  /** line id -> price for one unit of that line */
  readonly lines: ReadonlyMap<string, { readonly low: number; readonly high: number }>;
}

/** The source that stands beside a price of the user's own. */
export const ownPrices = 'own-prices';

/** The flow with the user's own prices; lines that the list does not name are taken over at its rate. */
export function withPrices(flow: Flow, list: PriceList): Flow {
  const costs = flow.costs.map((cost): Cost => {
    const own = list.lines.get(cost.id);
    const { currency } = list;
    if (own) return { ...cost, ...own, currency, year: list.year ?? cost.year, source: ownPrices };
    return { ...cost, low: cost.low * list.rate, high: cost.high * list.rate, currency };
  });
  return { ...flow, costs };
}

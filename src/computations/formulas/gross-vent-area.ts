import { type SquareMetres, squareMetres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

const factorOutside = (factor: number): boolean => !within(factor, 1, 10);

/**
 * Gross opening that gives a net free area behind a cover. Source: jlc-vent-table (gross = net x factor).
 * Range: factor 1 to 10. A net free area printed on the vent wins over this.
 */
export function grossVentArea(netFreeArea: SquareMetres, coverFactor: number): SquareMetres | Outside {
  if (factorOutside(coverFactor)) return outside('coverFactor', '1 to 10');
  return squareMetres(netFreeArea * coverFactor);
}

/** Net free area of a gross opening behind a cover; the inverse of `grossVentArea`, same source and range. */
export function netFreeAreaOfOpening(gross: SquareMetres, coverFactor: number): SquareMetres | Outside {
  if (factorOutside(coverFactor)) return outside('coverFactor', '1 to 10');
  return squareMetres(gross / coverFactor);
}

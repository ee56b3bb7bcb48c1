import { type SquareMetres, squareMetres } from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';

/**
 * Net free area that a vented attic or under-floor space needs: its area over the ratio (150 for 1/150).
 * Source: irc-r806 (attic, R806.2) and irc-r408 (under-floor, R408.1-2); the ratio belongs to the place.
 * Range: area up to 10,000 m2, ratio 50 to 3,000.
 */
export function requiredNetFreeArea(ventedArea: SquareMetres, ratio: number): SquareMetres | Outside {
  if (!within(ventedArea, 0, 10_000)) return outside('ventedArea', '0 to 10,000 sq m');
  if (!within(ratio, 50, 3000)) return outside('ratio', '50 to 3,000');
  return squareMetres(ventedArea / ratio);
}

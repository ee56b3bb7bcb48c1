import {
  type CubicMetres,
  cubicMetres,
  type Kilograms,
  kilograms,
  type Metres,
  metres,
  type SquareMetres,
} from '../../quantities/index.ts';
import { type Outside, outside, within } from './outside.ts';
import { wholeCount } from './whole-count.ts';

/** Adds a waste allowance (0.1 for a tenth) to an amount. Arithmetic. Range: 0 to 1. */
export function withWaste(amount: number, waste: number): number | Outside {
  return within(waste, 0, 1) ? amount * (1 + waste) : outside('waste', '0 to 100 %');
}

/** Volume that covers an area to a depth. Arithmetic (gravel tables agree). Range: depth to 1 m, area to 100,000 m2. */
export function coveringVolume(area: SquareMetres, depth: Metres): CubicMetres | Outside {
  if (!within(area, 0, 100_000)) return outside('area', '0 to 100,000 sq m');
  if (!within(depth, 0, 1)) return outside('depth', '0 to 1 m');
  return cubicMetres(area * depth);
}

/** Weight of a loose material. Range: bulk density 500 to 3,000 kg/m3. */
export function looseWeight(volume: CubicMetres, densityKilogramsPerCubicMetre: number): Kilograms | Outside {
  if (!within(densityKilogramsPerCubicMetre, 500, 3000)) return outside('density', '500 to 3,000 kg a cu m');
  return kilograms(volume * densityKilogramsPerCubicMetre);
}

/** Length of bead of a width and depth that one cartridge fills. Arithmetic. Range: bead 0.5 to 50 mm each way. */
export function beadFromCartridge(
  cartridge: CubicMetres,
  beadWidth: Metres,
  beadDepth: Metres,
): Metres | Outside {
  if (!within(beadWidth, 0.0005, 0.05)) return outside('beadWidth', '0.5 to 50 mm');
  if (!within(beadDepth, 0.0005, 0.05)) return outside('beadDepth', '0.5 to 50 mm');
  return metres(cartridge / (beadWidth * beadDepth));
}

/** Length round the two sides and the top or foot of an opening. Arithmetic. */
export const threeSides = (width: Metres, height: Metres): Metres => metres(2 * height + width);

/** Mesh cut for an opening with an overlap all round. Arithmetic. Range: overlap to 0.3 m. */
export function meshPiece(width: Metres, height: Metres, overlap: Metres): SquareMetres | Outside {
  if (!within(overlap, 0, 0.3)) return outside('overlap', '0 to 0.3 m');
  return ((width + 2 * overlap) * (height + 2 * overlap)) as SquareMetres;
}

/** Whole packs of a size that hold an amount; always rounded up. Arithmetic. Range: pack above zero. */
export function packsFor(amount: number, pack: number): number | Outside {
  return pack > 0 ? wholeCount(amount / pack) : outside('pack', 'above zero');
}

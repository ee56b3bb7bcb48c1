import type { Spot } from '../../answers/condition.ts';
import { ofOption } from './given.ts';
import { chosen, type House, has, isUnknown } from './house.ts';
import type { Given } from './house-computation.ts';

/** A weak spot at a side: glass or wood; the open question where it is not known. */
export type WeakSpot = Given | { readonly question: string } | undefined;

const glassKinds: Readonly<Record<string, string>> = {
  single: 'window-single',
  dual: 'window-double',
  tempered: 'window-tempered',
};

/** The glass at a side. */
export function glassAt(house: House, spot: Spot): WeakSpot {
  if (isUnknown(house, 'openings.glass', spot)) return { question: 'openings.glass' };
  const [glass = ''] = chosen(house, 'openings.glass', spot);
  const receiver = glassKinds[glass];
  return receiver === undefined ? undefined : ofOption('openings.glass', glass, receiver);
}

/** Wood at a side that heat may light: the wall, else the eave, else what is behind a vent. */
export function woodAt(house: House, spot: Spot): WeakSpot {
  const [wall = ''] = chosen(house, 'siding.kind', spot);
  if (wall === 'wood' || wall === 'shingle') return ofOption('siding.kind', wall, 'wall-wood');
  if (has(house, 'eaves.kind', ['open'], spot)) return ofOption('eaves.kind', 'open', 'eave');
  if (has(house, 'eaves.soffit', ['thin-wood'], spot)) return ofOption('eaves.soffit', 'thin-wood', 'eave');
  if (has(house, 'zone0.plant-under', ['vent'], spot)) return ofOption('zone0.plant-under', 'vent', 'vent');
  return isUnknown(house, 'siding.kind', spot) ? { question: 'siding.kind' } : undefined;
}

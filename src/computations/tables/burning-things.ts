import { kilowattsPerSquareMetre, type WattsPerSquareMetre } from '../../quantities/index.ts';
import type { Status } from './source-status.ts';

/** A thing that burns near a house, drawn as an upright face of flame as wide as the thing. */
export type BurningThing = {
  readonly id: string;
  readonly label: string;
  /** Height of the flame above the ground, as a multiple of the thing's height. */
  readonly flameHeights: number;
  /** False for what flares and is over in seconds to minutes. */
  readonly lasting: boolean;
  readonly status: Status;
};

/**
 * Flame heights are judgement from memory (flame-size-memory). A burning Douglas fir (nist-fir-data, 2 m, 0.417 kg/s)
 * gives about three and a half heights by Heskestad's formula; heavier things flame less for their height. That fir stayed at its peak for about 8 s; how long the others last is memory too.
 */
export const BURNING_THINGS: readonly BurningThing[] = [
  { id: 'shrub', label: 'shrub or small conifer', flameHeights: 3.5, lasting: false, status: 'memory' },
  { id: 'firewood', label: 'firewood pile', flameHeights: 2, lasting: true, status: 'memory' },
  { id: 'fence', label: 'wood fence', flameHeights: 2, lasting: true, status: 'memory' },
  { id: 'shed', label: 'shed or playhouse', flameHeights: 2, lasting: true, status: 'memory' },
  {
    id: 'house',
    label: "neighbour's house, the facing wall",
    flameHeights: 1.5,
    lasting: true,
    status: 'memory',
  },
  {
    id: 'deck',
    label: 'furniture or stored things on or under a deck',
    flameHeights: 2,
    lasting: true,
    status: 'memory',
  },
];

/** Heat sent out by a burning face: 84 kW/m2, a black face at 830 C. Source: bre-187, appendix A; status read. */
export const FACE_FLUX: WattsPerSquareMetre = kilowattsPerSquareMetre(84);

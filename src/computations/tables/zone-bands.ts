import { feet, type Metres } from '../../quantities/index.ts';

/** Outer edges of the three bands round a house, 5, 30 and 100 ft. Common practice of the trade; a place may differ. */
export const ZONE_EDGES: { readonly near: Metres; readonly middle: Metres; readonly far: Metres } = {
  near: feet(5),
  middle: feet(30),
  far: feet(100),
};

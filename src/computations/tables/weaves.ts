import { inches, type Metres } from '../../quantities/index.ts';
import type { Status } from './source-status.ts';

/** A square weave: wires an inch and their thickness. */
export type Weave = {
  readonly meshPerInch: number;
  readonly wire: Metres;
  readonly openFractionPercent?: number;
  readonly openingInches?: number;
  readonly status: Status;
};

/** Weaves with the opening or open area printed for them. Sources: astm-e2016 (read), catalogues (memory). */
export const PUBLISHED_WEAVES: readonly Weave[] = [
  { meshPerInch: 4, wire: inches(0.063), openingInches: 0.187, status: 'read' },
  { meshPerInch: 10, wire: inches(0.025), openingInches: 0.075, status: 'read' },
  { meshPerInch: 8, wire: inches(0.017), openFractionPercent: 74.65, status: 'memory' },
  { meshPerInch: 16, wire: inches(0.011), openFractionPercent: 67.9, status: 'memory' },
  { meshPerInch: 4, wire: inches(0.025), openFractionPercent: 81, status: 'memory' },
];

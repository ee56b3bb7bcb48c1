import type { SourceId } from './source-status.ts';

/** A published worked example that its own rule does not bear out; the tool follows the rule. */
export type Disagreement = {
  readonly id: string;
  readonly source: SourceId;
  readonly what: string;
  readonly printed: number;
  readonly byItsOwnRule: number;
  readonly unit: string;
};

/** Published examples that are wrong and must not be followed. */
export const DISAGREEMENTS: readonly Disagreement[] = [
  {
    id: 'roof-view-factor',
    source: 'bre-187',
    what: 'appendix A, roof example: the view factor was read off a graph; its own equation gives about half',
    printed: 0.06,
    byItsOwnRule: 0.0318,
    unit: '',
  },
  {
    id: 'roof-heat',
    source: 'bre-187',
    what: 'appendix A, roof example: the heat received follows from the same misread factor',
    printed: 5,
    byItsOwnRule: 2.67,
    unit: 'kW/m2',
  },
  {
    id: 'vents-rounded-down',
    source: 'vent-worked-examples',
    what: 'one worked example needs 17.04 vents and prints 17: too few; whole vents are rounded up',
    printed: 17,
    byItsOwnRule: 18,
    unit: 'vents',
  },
];

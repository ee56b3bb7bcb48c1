import { kilowattsPerSquareMetre, type WattsPerSquareMetre } from '../../quantities/index.ts';
import type { SourceId, Status } from './source-status.ts';

/** What a heat does to a thing that receives it. */
export type HeatCriterion = {
  readonly id: string;
  readonly label: string;
  readonly flux: WattsPerSquareMetre;
  readonly source: SourceId;
  readonly status: Status;
  /** A threshold to compare with; false for an observation that names no threshold. */
  readonly threshold: boolean;
  /** How long the heat must last to do it. */
  readonly exposure: 'short' | 'long';
};

/**
 * Heat that wood and glass were seen to stand or not. Values from memory are compared with and never turned into
 * a distance. Sources beside each row.
 */
export const HEAT_CRITERIA = {
  'wood-short': {
    id: 'wood-short',
    label: 'wood set alight by sparks or flame in a short exposure',
    flux: kilowattsPerSquareMetre(12.6),
    source: 'bre-187',
    status: 'read',
    threshold: true,
    exposure: 'short',
  },
  'wood-long': {
    id: 'wood-long',
    label: 'least heat that set wood alight in a long time',
    flux: kilowattsPerSquareMetre(4.3),
    source: 'babrauskas-2001',
    status: 'read',
    threshold: true,
    exposure: 'long',
  },
  'single-crack': {
    id: 'single-crack',
    label: 'first crack of a single pane',
    flux: kilowattsPerSquareMetre(4),
    source: 'glazing-crack-memory',
    status: 'memory',
    threshold: true,
    exposure: 'short',
  },
  'single-fall': {
    id: 'single-fall',
    label: 'a single pane falls out',
    flux: kilowattsPerSquareMetre(9),
    source: 'glazing-crack-memory',
    status: 'memory',
    threshold: true,
    exposure: 'short',
  },
  'double-fall': {
    id: 'double-fall',
    label: 'a double pane falls out',
    flux: kilowattsPerSquareMetre(18),
    source: 'glazing-crack-memory',
    status: 'memory',
    threshold: true,
    exposure: 'short',
  },
  'tempered-tested': {
    id: 'tempered-tested',
    label: 'most heat at which tempered glass was tested and did not break',
    flux: kilowattsPerSquareMetre(18),
    source: 'mowrer-1998',
    status: 'read',
    threshold: false,
    exposure: 'short',
  },
} as const satisfies Record<string, HeatCriterion>;

export type CriterionId = keyof typeof HEAT_CRITERIA;

/** Which criteria speak for which weak spot. */
export const RECEIVERS: readonly {
  readonly id: string;
  readonly label: string;
  readonly criteria: readonly CriterionId[];
}[] = [
  { id: 'wall-wood', label: 'wood wall', criteria: ['wood-short', 'wood-long'] },
  { id: 'eave', label: 'eave with wood in it', criteria: ['wood-short', 'wood-long'] },
  {
    id: 'vent',
    label: 'wood behind a vent, which mesh does not shield',
    criteria: ['wood-short', 'wood-long'],
  },
  { id: 'deck', label: 'wood deck or fence', criteria: ['wood-short', 'wood-long'] },
  { id: 'window-single', label: 'window with a single pane', criteria: ['single-crack', 'single-fall'] },
  { id: 'window-double', label: 'window with two panes', criteria: ['double-fall'] },
  { id: 'window-tempered', label: 'window with tempered glass', criteria: ['tempered-tested'] },
];

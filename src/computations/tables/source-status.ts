/** How well a number is known: seen in its source, seen where that is reproduced, practice of the trade, or memory. */
export type Status = 'read' | 'reported' | 'practice' | 'memory';

/**
 * Status of every publication that the computations rest on, by id. Title, year and publisher are in
 * `flows/sources/science.yaml`; a test keeps the two alike.
 */
export const SOURCE_STATUS = {
  'nist-sp-811': 'memory',
  'irc-r806': 'reported',
  'irc-r408': 'reported',
  'vent-worked-examples': 'read',
  'jlc-vent-table': 'read',
  'astm-e2016': 'read',
  'blevins-1984': 'reported',
  'bre-187': 'read',
  'howell-catalog': 'read',
  'nureg-1805': 'read',
  'heskestad-1983': 'reported',
  'nist-burner-data': 'read',
  'nist-fir-data': 'read',
  'babrauskas-2001': 'read',
  'mowrer-1998': 'read',
  'glazing-crack-memory': 'memory',
  'flame-size-memory': 'memory',
  'as-3959-slope': 'read',
  'uc-anr-spacing': 'read',
  'uc-anr-limbing': 'read',
  'ansi-a300-1995': 'read',
  'steiner-formula': 'read',
  'gravel-tables': 'read',
  'supply-memory': 'memory',
  'flow-memory': 'memory',
  'trade-practice': 'practice',
  arithmetic: 'read',
} as const satisfies Record<string, Status>;

/** Id of a publication in `flows/sources/science.yaml`. */
export type SourceId = keyof typeof SOURCE_STATUS;

const WEAKEST_FIRST: readonly Status[] = ['memory', 'practice', 'reported', 'read'];

/** The weakest of some statuses; `read` for none. */
export const weakestStatus = (statuses: readonly Status[]): Status =>
  WEAKEST_FIRST.find((status) => statuses.includes(status)) ?? 'read';

/** The weakest status of some publications. */
export const statusOf = (sources: readonly SourceId[]): Status =>
  weakestStatus(sources.map((source) => SOURCE_STATUS[source]));

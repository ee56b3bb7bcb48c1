const RELATIVE_SLACK = 1e-9;

/**
 * Number of whole things needed for a quantity: always rounded up (7.2 needs 8), except that noise of a
 * billionth does not add one to an exact multiple. Arithmetic, no source. Range: zero and more.
 */
export function wholeCount(needed: number): number {
  return Math.max(0, Math.ceil(needed * (1 - RELATIVE_SLACK)));
}

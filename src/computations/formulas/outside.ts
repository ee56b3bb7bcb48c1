/** Said instead of a number when an input lies outside what a formula covers; `allowed` tells the range. */
export type Outside = { readonly kind: 'outside'; readonly field: string; readonly allowed: string };

/** Makes the refusal of a formula for one of its inputs. */
export const outside = (field: string, allowed: string): Outside => ({ kind: 'outside', field, allowed });

/** Tells a refusal from a number or other result. */
export const isOutside = (result: unknown): result is Outside =>
  typeof result === 'object' && result !== null && 'kind' in result && result.kind === 'outside';

/** True for a finite number within both limits; NaN and infinity are never within. */
export const within = (value: number, least: number, most: number): boolean =>
  value >= least && value <= most;

import type { Range } from './job-cost.ts';

/** What the household can give; nothing where there is no limit. */
export interface Limits {
  readonly money?: number;
  /** Hours of the household's own work. */
  readonly hours?: number;
}

/** A job of the chosen set, in the order of doing. */
export interface BudgetJob {
  readonly id: string;
  /** Taken off at its turn; these add up to `takenOff`. */
  readonly share: number;
  /** By itself, without what it shares with others. */
  readonly money: Range;
  readonly hours: Range;
}

/** A job of the list that is not in the set. */
export interface LeftOut {
  readonly id: string;
  /** What it would take off on top of the set. */
  readonly adds: number;
  /** With all that it still needs and has to pay. */
  readonly money: Range;
  readonly hours: Range;
  /** `limit`: it does not fit on top of the set. `little`: it would fit, and takes nothing off any more. `noPrice`: nobody knows its price. */
  readonly why: 'limit' | 'little' | 'noPrice';
}

/** What a larger limit would change. */
export interface Step {
  /** On top of the limit: money of the list's currency, or hours. */
  readonly extra: number;
  readonly adds: number;
  readonly newJobs: readonly string[];
  /** Jobs of the set that make room for better ones. */
  readonly dropped: readonly string[];
}

/** The set of jobs that takes most off within money and hours. */
export interface BudgetPlan {
  readonly limits: Limits;
  readonly currency: string | undefined;
  readonly jobs: readonly BudgetJob[];
  /** Together, shared costs once. The high end is held against the limit. */
  readonly money: Range;
  readonly hours: Range;
  readonly exposure: number;
  readonly takenOff: number;
  /** What all jobs of the list together take off. */
  readonly possible: number;
  /** No other set within the limits takes off more. */
  readonly exact: boolean;
  /** At most this part of what the set takes off could be missed; 0 when exact. */
  readonly gap: number;
  /** What adds most, first. */
  readonly leftOut: readonly LeftOut[];
  readonly moreMoney: Step | undefined;
  readonly moreHours: Step | undefined;
}

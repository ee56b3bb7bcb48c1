import type { Spot } from '../../answers/condition.ts';
import type { Dimension } from '../../quantities/index.ts';
import type { SourceId, Status } from '../tables/source-status.ts';
import type {
  Assumption,
  ComputationGroup,
  InputValue,
  ResultValue,
  ShoppingLine,
} from '../work-out/computation.ts';
import type { NoteId } from '../work-out/notes.ts';
import type { HouseId } from './computed-ids.ts';
import type { House } from './house.ts';

/** Something a computation of a house was worked out from, in the base unit of its dimension. */
export interface HouseInput {
  /** Question, limit, name of what was taken for granted, or input of the computation that kept its usual value. */
  readonly id: string;
  readonly from: 'answer' | 'limit' | 'assumed' | 'usual';
  /** A choice has no dimension. */
  readonly dimension?: Dimension;
  readonly value: number | string;
}

/** A value to compute with, and what it was taken from. */
export interface Given {
  readonly value: InputValue;
  readonly shown: readonly HouseInput[];
}

/** What is to be computed at a spot, or the question whose answer it waits for. */
export type Wanted =
  | { readonly kind: 'missing'; readonly question: string }
  | {
      readonly kind: 'inputs';
      /** By the input ids of the computation that is run. */
      readonly inputs: Readonly<Record<string, Given | undefined>>;
      /** What the result is compared with. */
      readonly beside?: readonly HouseInput[];
      /** Values that follow from the result. */
      readonly also?: (value: (id: string) => number) => readonly ResultValue[];
      readonly notes?: readonly NoteId[];
    };

/** A computation asked of the answers of a house; `at` gives nothing where it has nothing to say. */
export interface HouseComputation {
  readonly id: HouseId;
  /** Once for the house, for each side, or for each member of a group. */
  readonly per: string;
  /** Id of the computation that is run. */
  readonly runs: string;
  readonly at: (house: House, spot: Spot) => Wanted | undefined;
}

interface Told {
  readonly id: HouseId;
  readonly spot: Spot;
  readonly group: ComputationGroup;
  readonly inputs: readonly HouseInput[];
}

/** What a computation says at a spot of a house; a value its formula does not cover gives no number. */
export type HouseOutcome =
  | (Told & {
      readonly kind: 'result';
      readonly values: readonly ResultValue[];
      readonly assumptions: readonly Assumption[];
      readonly shopping: readonly ShoppingLine[];
      readonly notes: readonly NoteId[];
      readonly sources: readonly SourceId[];
      readonly status: Status;
    })
  | (Told & { readonly kind: 'outside'; readonly field: string; readonly allowed: string })
  | (Told & { readonly kind: 'missing'; readonly question: string });

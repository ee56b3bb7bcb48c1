import type { Dimension, UnitId, UnsafeEnd } from '../../quantities/index.ts';
import type { Outline } from '../formulas/outline.ts';
import type { SourceId, Status } from '../tables/source-status.ts';
import type { NoteId } from './notes.ts';

type InputBase = { readonly id: string; readonly label: string; readonly required: boolean };

/** A number with a dimension; all limits and the default are in the base unit of the dimension. */
export type QuantityInput = InputBase & {
  readonly kind: 'quantity';
  readonly dimension: Dimension;
  /** Unit of a bare number, by unit system. */
  readonly units: { readonly imperial: UnitId; readonly metric: UnitId };
  /** What the formula covers. */
  readonly min: number;
  readonly max: number;
  /** Beyond these a value is absurd and refused as bad input. */
  readonly sane: { readonly min: number; readonly max: number };
  readonly whole: boolean;
  readonly unsafeEnd: UnsafeEnd;
  readonly default?: number;
};

/** One of some named options. */
export type ChoiceInput = InputBase & {
  readonly kind: 'choice';
  readonly options: readonly { readonly id: string; readonly label: string }[];
  readonly default?: string;
};

/** The outline of a house with what is attached. */
export type OutlineInput = InputBase & { readonly kind: 'outline' };

export type InputDef = QuantityInput | ChoiceInput | OutlineInput;
export type InputValue = number | string | Outline;
export type Inputs = Readonly<Record<string, InputValue | undefined>>;

/** One number of a result, in the base unit of its dimension. */
export type ResultValue = {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly dimension: Dimension;
};

/** A line of a shopping list: so much of a thing, in so many whole packs. */
export type ShoppingLine = {
  readonly item: string;
  readonly label: string;
  readonly amount: number;
  readonly dimension: Dimension;
  readonly pack: number;
  readonly count: number;
};

/** A number the computation took for granted, with how well it is known. */
export type Assumption = ResultValue & { readonly source: SourceId; readonly status: Status };

export type WorkedOut = {
  readonly kind: 'result';
  readonly computation: string;
  readonly values: readonly ResultValue[];
  readonly assumptions: readonly Assumption[];
  readonly shopping: readonly ShoppingLine[];
  readonly notes: readonly NoteId[];
  readonly sources: readonly SourceId[];
  /** The weakest status of the sources. */
  readonly status: Status;
};

export type OutsideCover = {
  readonly kind: 'outside';
  readonly field: string;
  readonly allowed: string;
  readonly message: 'outside what this formula covers';
};

export type BadInput = {
  readonly kind: 'badInput';
  readonly field: string;
  readonly problem: string;
  readonly allowed: string;
};

export type WorkOutcome = WorkedOut | OutsideCover | BadInput;

export type ComputationGroup = 'vents' | 'heat' | 'plants' | 'zones' | 'supplies';

/** A computation that can be run alone: inputs in base units in, values in base units out; pure, never throws. */
export type Computation = {
  readonly id: string;
  readonly title: string;
  readonly group: ComputationGroup;
  readonly inputs: readonly InputDef[];
  readonly run: (inputs: Inputs) => WorkOutcome;
};

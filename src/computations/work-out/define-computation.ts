import type { Outline } from '../formulas/outline.ts';
import { isOutside, type Outside } from '../formulas/outside.ts';
import { type SourceId, statusOf, weakestStatus } from '../tables/source-status.ts';
import { checkInputs, outsideCover } from './check-inputs.ts';
import type {
  Assumption,
  Computation,
  ComputationGroup,
  InputDef,
  Inputs,
  ResultValue,
  ShoppingLine,
} from './computation.ts';
import type { NoteId } from './notes.ts';

/** Typed access to checked inputs; asking for an input of another kind is a bug and throws. */
export type Values = {
  readonly number: (id: string) => number;
  readonly maybe: (id: string) => number | undefined;
  readonly choice: (id: string) => string;
  readonly outline: (id: string) => Outline;
};

/** What the work of a computation hands back. */
export type Worked = {
  readonly values: readonly ResultValue[];
  readonly sources: readonly SourceId[];
  readonly notes?: readonly NoteId[];
  readonly assumptions?: readonly Assumption[];
  readonly shopping?: readonly ShoppingLine[];
};

const wrongKind = (id: string): never => {
  throw new Error(`the input ${id} is not of the kind asked for`);
};

function access(inputs: Inputs): Values {
  const maybe = (id: string): number | undefined => {
    const value = inputs[id];
    return value === undefined || typeof value === 'number' ? value : wrongKind(id);
  };
  return {
    maybe,
    number: (id) => maybe(id) ?? wrongKind(id),
    choice: (id) => {
      const value = inputs[id];
      return typeof value === 'string' ? value : wrongKind(id);
    },
    outline: (id) => {
      const value = inputs[id];
      return typeof value === 'object' ? value : wrongKind(id);
    },
  };
}

/** Goes on with the numbers that formulas gave, or hands back the first refusal among them. */
export function whenCovered<const T extends readonly unknown[], R>(
  results: T,
  then: (...values: { [K in keyof T]: Exclude<T[K], Outside> }) => R,
): R | Outside {
  const refusal = results.find(isOutside);
  return refusal ?? then(...(results as unknown as { [K in keyof T]: Exclude<T[K], Outside> }));
}

/** Makes a computation from its inputs and its work; the work hands back the refusal of a formula as it is. */
export function defineComputation(definition: {
  readonly id: string;
  readonly title: string;
  readonly group: ComputationGroup;
  readonly inputs: readonly InputDef[];
  readonly work: (values: Values) => Worked | Outside;
}): Computation {
  const { id, title, group, inputs, work } = definition;
  const run: Computation['run'] = (given) => {
    const checked = checkInputs(inputs, given);
    if (checked.kind !== 'sound') return checked;
    const worked = work(access(checked.values));
    if (isOutside(worked)) return outsideCover(worked.field, worked.allowed);
    const { values, sources, notes = [], assumptions = [], shopping = [] } = worked;
    const status = weakestStatus([statusOf(sources), ...assumptions.map((assumption) => assumption.status)]);
    return { kind: 'result', computation: id, values, assumptions, shopping, notes, sources, status };
  };
  return { id, title, group, inputs, run };
}

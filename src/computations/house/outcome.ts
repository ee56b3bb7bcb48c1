import type { Spot } from '../../answers/condition.ts';
import { type Status, weakestStatus } from '../tables/source-status.ts';
import type { InputDef, Inputs, WorkedOut } from '../work-out/computation.ts';
import { findComputation } from '../work-out/registry.ts';
import type { House } from './house.ts';
import type { HouseComputation, HouseInput, HouseOutcome, Wanted } from './house-computation.ts';
import { HOUSE_COMPUTATIONS } from './registry.ts';

/** What the computation takes when nothing is said is shown too. */
function defaultsOf(defs: readonly InputDef[], inputs: Inputs): readonly HouseInput[] {
  return defs.flatMap((input): HouseInput[] =>
    input.kind === 'quantity' && input.default !== undefined && inputs[input.id] === undefined
      ? [{ id: input.id, from: 'usual', dimension: input.dimension, value: input.default }]
      : [],
  );
}

/** A guessed size makes a result no better known than memory; usual values count with the sources. */
function statusWith(worked: WorkedOut, inputs: readonly HouseInput[]): Status {
  const guessed = inputs.some((input) => input.from === 'assumed');
  return guessed ? weakestStatus([worked.status, 'memory']) : worked.status;
}

function run(computation: HouseComputation, spot: Spot, wanted: Wanted & { kind: 'inputs' }): HouseOutcome {
  const { id, runs } = computation;
  const called = findComputation(runs);
  if (called === undefined) throw new Error(`there is no computation ${runs}`);
  const given = Object.entries(wanted.inputs).flatMap(([name, one]) => (one ? [[name, one] as const] : []));
  const inputs = Object.fromEntries(given.map(([name, one]) => [name, one.value]));
  const shown = [
    ...given.flatMap(([, one]) => one.shown),
    ...(wanted.beside ?? []),
    ...defaultsOf(called.inputs, inputs),
  ];
  const told = { id, spot, group: called.group, inputs: shown };
  const worked = called.run(inputs);
  if (worked.kind !== 'result')
    return { kind: 'outside', ...told, field: worked.field, allowed: worked.allowed };
  const value = (name: string) => worked.values.find((one) => one.id === name)?.value ?? Number.NaN;
  return {
    kind: 'result',
    ...told,
    values: [...worked.values, ...(wanted.also?.(value) ?? [])],
    assumptions: worked.assumptions,
    shopping: worked.shopping,
    notes: [...new Set([...(wanted.notes ?? []), ...worked.notes])],
    sources: worked.sources,
    status: statusWith(worked, shown),
  };
}

function outcomeOf(house: House, computation: HouseComputation, spot: Spot): HouseOutcome | undefined {
  const wanted = computation.at(house, spot);
  if (wanted === undefined) return undefined;
  if (wanted.kind === 'inputs') return run(computation, spot, wanted);
  const group = findComputation(computation.runs)?.group ?? 'plants';
  return { kind: 'missing', id: computation.id, spot, group, inputs: [], question: wanted.question };
}

/** The spot that a computation looks at, seen from a spot; nothing where it is decided elsewhere. */
function spotFor(per: string, { side, group, member }: Spot): { spot: Spot; suffix: string } | undefined {
  if (per === 'house') return { spot: {}, suffix: '' };
  if (per === 'side') return side === undefined ? undefined : { spot: { side }, suffix: `@${side}` };
  if (group !== per || member === undefined) return undefined;
  return { spot: { group, member }, suffix: `@${group}/${member}` };
}

/** What a computation says seen from a spot, worked out once; nothing where it has nothing to say. */
export function outcomeAt(house: House, id: string, at: Spot): HouseOutcome | undefined {
  const computation = HOUSE_COMPUTATIONS.get(id);
  const place = computation && spotFor(computation.per, at);
  if (computation === undefined || place === undefined) return undefined;
  const key = id + place.suffix;
  if (!house.known.has(key)) house.known.set(key, outcomeOf(house, computation, place.spot));
  return house.known.get(key);
}

function spotsOf(house: House, per: string): readonly Spot[] {
  if (per === 'house') return [{}];
  if (per === 'side') return house.facts.sides.map((side) => ({ side }));
  return house.facts.members(per).map((member) => ({ group: per, member }));
}

/** Everything that can be worked out about a house, in the order of a report. */
export const allOutcomes = (house: House): readonly HouseOutcome[] =>
  [...HOUSE_COMPUTATIONS.values()].flatMap(({ id, per }) =>
    spotsOf(house, per).flatMap((spot) => outcomeAt(house, id, spot) ?? []),
  );

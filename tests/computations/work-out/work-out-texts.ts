import {
  findComputation,
  type Inputs,
  parseInput,
  type WorkedOut,
} from '../../../src/computations/work-out/index.ts';
import { fromBase, type UnitId, type UnitSystem } from '../../../src/quantities/index.ts';

/** Runs a computation on texts, as someone would type them. */
export function workOut(
  id: string,
  texts: Readonly<Record<string, string>>,
  system: UnitSystem = 'imperial',
) {
  const computation = findComputation(id);
  if (computation === undefined) throw new Error(`no computation ${id}`);
  const inputs: Record<string, Inputs[string]> = {};
  for (const [field, text] of Object.entries(texts)) {
    const input = computation.inputs.find((one) => one.id === field);
    if (input === undefined) throw new Error(`no input ${field}`);
    const parsed = parseInput(input, text, { system });
    if (parsed.kind === 'badInput') return parsed;
    inputs[field] = parsed.value;
  }
  return computation.run(inputs);
}

/** The result of a computation on texts; anything else fails the test. */
export function result(id: string, texts: Readonly<Record<string, string>>, system?: UnitSystem): WorkedOut {
  const outcome = workOut(id, texts, system);
  if (outcome.kind !== 'result') throw new Error(`${outcome.field}: ${outcome.allowed}`);
  return outcome;
}

/** One value of a result in a unit. */
export const value = (outcome: WorkedOut, id: string, unit: UnitId): number =>
  fromBase(outcome.values.find((one) => one.id === id)?.value ?? Number.NaN, unit);

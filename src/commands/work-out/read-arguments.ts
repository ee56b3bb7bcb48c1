import {
  type BadInput,
  type Computation,
  type Inputs,
  parseInput,
} from '../../computations/work-out/index.ts';
import { didYouMean } from '../../flow/did-you-mean.ts';
import type { UnitSystem } from '../../quantities/index.ts';
import { ProgramError } from '../program-error.ts';

/** What was typed after `work-out`: the computation, its inputs as typed, and how to show the result. */
export interface TypedArguments {
  readonly id: string | undefined;
  readonly typed: ReadonlyMap<string, string>;
  readonly json: boolean;
  readonly help: boolean;
  readonly units: UnitSystem;
}

function unitsNamed(name: string): UnitSystem {
  if (name === 'imperial' || name === 'metric') return name;
  throw new ProgramError(`--units ${name} is not known. Say one of: imperial, metric.`);
}

/** Sorts the words after `work-out`; every input is `--name value` or `--name=value`, a value may start with a minus. */
export function sortArguments(words: readonly string[]): TypedArguments {
  const typed = new Map<string, string>();
  const flags = new Set<string>();
  let id: string | undefined;
  for (let place = 0; place < words.length; place += 1) {
    const word = words[place] ?? '';
    if (word === '-h' || word === '--help' || word === '--json') flags.add(word === '-h' ? '--help' : word);
    else if (word.startsWith('--')) {
      const [name = '', ...rest] = word.slice(2).split('=');
      const value = rest.length > 0 ? rest.join('=') : words[place + 1];
      if (value === undefined) throw new ProgramError(`--${name} needs a value after it.`);
      if (typed.has(name)) throw new ProgramError(`--${name} is given twice: give it once.`);
      typed.set(name, value);
      if (rest.length === 0) place += 1;
    } else if (id === undefined) id = word;
    else
      throw new ProgramError(
        `"${word}" was not expected. Inputs are given as --name value; put quotes round a value with spaces.`,
      );
  }
  const units = unitsNamed(typed.get('units') ?? 'imperial');
  typed.delete('units');
  return { id, typed, json: flags.has('--json'), help: flags.has('--help'), units };
}

/** Reads the inputs of a computation from what was typed; the first that cannot be taken is refused by name. */
export function readInputs(
  computation: Computation,
  { typed, units }: TypedArguments,
): { readonly kind: 'read'; readonly inputs: Inputs } | BadInput {
  const inputs: Record<string, Inputs[string]> = {};
  for (const [name, text] of typed) {
    const input = computation.inputs.find((one) => one.id === name);
    if (input === undefined) {
      const ids = computation.inputs.map((one) => one.id);
      const hint = didYouMean(name, ids);
      const problem = `is not an input of this computation.${hint === undefined ? '' : ` ${hint}`}`;
      return { kind: 'badInput', field: name, problem, allowed: ids.join(', ') };
    }
    const parsed = parseInput(input, text, { system: units });
    if (parsed.kind === 'badInput') return parsed;
    inputs[name] = parsed.value;
  }
  return { kind: 'read', inputs };
}

import { isSimple, type Outline } from '../formulas/outline.ts';
import { allowedText } from './allowed-text.ts';
import type { BadInput, InputDef, Inputs, InputValue, OutsideCover, QuantityInput } from './computation.ts';

/** Makes the refusal of an input. */
export const badInput = (input: InputDef, problem: string): BadInput => ({
  kind: 'badInput',
  field: input.id,
  problem,
  allowed: allowedText(input),
});

/** Makes the refusal of a value that the formula does not cover. */
export const outsideCover = (field: string, allowed: string): OutsideCover => ({
  kind: 'outside',
  field,
  allowed,
  message: 'outside what this formula covers',
});

function checkQuantity(input: QuantityInput, value: InputValue): BadInput | OutsideCover | undefined {
  if (typeof value !== 'number') return badInput(input, 'must be a number');
  if (!Number.isFinite(value)) return badInput(input, 'must be a finite number');
  if (value < 0) return badInput(input, 'must not be below zero');
  if (value > input.sane.max) return badInput(input, 'is larger than can be right');
  if (input.whole && !Number.isInteger(value)) return badInput(input, 'must be a whole number');
  // A billionth of slack, so that a limit typed in the other unit system is still within.
  const slack = 1e-9 * Math.max(Math.abs(input.max), Math.abs(value));
  const covered = value >= input.min - 1e-9 * input.min && value <= input.max + slack;
  return covered ? undefined : outsideCover(input.id, allowedText(input));
}

const isOutline = (value: InputValue): value is Outline => Array.isArray(value);

function checkValue(input: InputDef, value: InputValue): BadInput | OutsideCover | undefined {
  switch (input.kind) {
    case 'quantity':
      return checkQuantity(input, value);
    case 'choice':
      return input.options.some(({ id }) => id === value)
        ? undefined
        : badInput(input, 'must be one of the options');
    case 'outline': {
      const sound = isOutline(value) && value.length > 0 && value.every((polygon) => isSimple(polygon));
      if (!sound) return badInput(input, 'must be one or more closed outlines whose sides do not cross');
      const span = value.flat().every(({ x, y }) => Math.abs(x) <= 500 && Math.abs(y) <= 500);
      return span ? undefined : outsideCover(input.id, 'houses up to 500 m (1,640 ft) from end to end');
    }
    default:
      return input satisfies never;
  }
}

/** The values to compute with, defaults filled in; or the first input that is missing, unknown, bad or not covered. */
export function checkInputs(
  defs: readonly InputDef[],
  inputs: Inputs,
): { readonly kind: 'sound'; readonly values: Inputs } | BadInput | OutsideCover {
  for (const id of Object.keys(inputs)) {
    if (defs.some((input) => input.id === id)) continue;
    const allowed = defs.map((input) => input.id).join(', ');
    return { kind: 'badInput', field: id, problem: 'is not an input of this computation', allowed };
  }
  const values: Record<string, InputValue | undefined> = {};
  for (const input of defs) {
    const value = inputs[input.id] ?? ('default' in input ? input.default : undefined);
    if (value === undefined) {
      if (input.required) return badInput(input, 'is missing');
      continue;
    }
    const refused = checkValue(input, value);
    if (refused !== undefined) return refused;
    values[input.id] = value;
  }
  return { kind: 'sound', values };
}

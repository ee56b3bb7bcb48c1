import {
  dimensionOf,
  explainReason,
  type NotRead,
  type NumberWords,
  readArea,
  readQuantity,
  readSlope,
  type UnitId,
  type UnitSystem,
} from '../../quantities/index.ts';
import { badInput } from './check-inputs.ts';
import type { BadInput, ChoiceInput, InputDef, InputValue, QuantityInput } from './computation.ts';
import { parseOutline } from './parse-outline.ts';

/** An input read from text, in the base unit; its range is checked when the computation runs. */
export type ParsedInput =
  | {
      readonly kind: 'value';
      readonly value: InputValue;
      readonly said: string;
      readonly approximate: boolean;
      readonly assumedUnit?: UnitId;
    }
  | BadInput;

type Options = { readonly system?: UnitSystem; readonly words?: NumberWords };

const exactly = (value: InputValue, said: string): ParsedInput => ({
  kind: 'value',
  value,
  said,
  approximate: false,
});

function refusal(input: InputDef, failed: Omit<NotRead, 'kind'>): BadInput {
  return badInput(input, explainReason({ kind: 'notRead', ...failed }));
}

function parseSlope(input: QuantityInput, text: string, words: Options['words']): ParsedInput {
  const read = readSlope(text, {
    unsafeEnd: input.unsafeEnd,
    mostPercent: input.sane.max,
    ...(words === undefined ? {} : { words }),
  });
  if (read.kind === 'notASlope') return refusal(input, read);
  const assumed = read.assumedUnit === undefined ? {} : { assumedUnit: read.assumedUnit };
  return { kind: 'value', value: read.percent, said: read.said, approximate: read.approximate, ...assumed };
}

/** A fraction may be said as a percentage. */
function parseFraction(input: QuantityInput, text: string, words: Options['words']): ParsedInput {
  const given = words === undefined ? {} : { words };
  const options = { unsafeEnd: input.unsafeEnd, most: 100 * input.sane.max, ...given };
  const asPercent = readQuantity(text, { dimension: 'slope', unit: 'percent', ...options });
  if (asPercent.kind !== 'notRead' && asPercent.assumedUnit === undefined) {
    return {
      kind: 'value',
      value: asPercent.value / 100,
      said: asPercent.said,
      approximate: asPercent.approximate,
    };
  }
  const plain = readQuantity(text, {
    dimension: 'fraction',
    unit: 'fraction',
    ...options,
    most: input.sane.max,
  });
  if (plain.kind === 'notRead') return refusal(input, plain);
  return { kind: 'value', value: plain.value, said: plain.said, approximate: plain.approximate };
}

function parseQuantity(
  input: QuantityInput,
  text: string,
  { system = 'imperial', words }: Options,
): ParsedInput {
  if (input.dimension === 'slope') return parseSlope(input, text, words);
  if (input.dimension === 'fraction') return parseFraction(input, text, words);
  const unit = input.units[system];
  const given = words === undefined ? {} : { words };
  const read = readQuantity(text, {
    dimension: input.dimension,
    unit,
    unsafeEnd: input.unsafeEnd,
    most: input.sane.max,
    ...given,
  });
  if (read.kind === 'notRead') {
    const sides =
      input.dimension === 'area'
        ? readArea(text, { unsafeEnd: input.unsafeEnd, ...sideUnit(unit), ...given })
        : read;
    if (sides.kind === 'area' || sides.kind === 'range') {
      return { kind: 'value', value: sides.squareMetres, said: sides.said, approximate: sides.approximate };
    }
    return refusal(input, read);
  }
  // A count has no unit to assume.
  const assumed =
    read.assumedUnit === undefined || dimensionOf(unit) === 'count' ? {} : { assumedUnit: unit };
  return { kind: 'value', value: read.value, said: read.said, approximate: read.approximate, ...assumed };
}

function sideUnit(unit: UnitId): { readonly sideUnit: 'in' | 'cm' | 'm' | 'ft' } {
  const units: Readonly<Partial<Record<UnitId, 'in' | 'cm' | 'm'>>> = { sqin: 'in', sqcm: 'cm', sqm: 'm' };
  return { sideUnit: units[unit] ?? 'ft' };
}

function parseChoice(input: ChoiceInput, text: string): ParsedInput {
  const said = text.trim().toLowerCase();
  const option = input.options.find(({ id, label }) => id === said || label.toLowerCase() === said);
  return option === undefined
    ? badInput(input, 'must be one of the options')
    : exactly(option.id, text.trim());
}

/**
 * Reads one input of a computation from text, in any unit of its dimension; a bare number takes the usual unit of the
 * system (imperial when not given) and says so. A unit of another dimension is refused by name.
 */
export function parseInput(input: InputDef, text: string, options: Options = {}): ParsedInput {
  switch (input.kind) {
    case 'quantity':
      return parseQuantity(input, text, options);
    case 'choice':
      return parseChoice(input, text);
    case 'outline': {
      const read = parseOutline(text, options.system ?? 'imperial');
      return read.kind === 'outline' ? exactly(read.outline, text.trim()) : badInput(input, read.problem);
    }
    default:
      return input satisfies never;
  }
}

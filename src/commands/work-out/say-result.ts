import { type Computation, type Inputs, NOTES, type WorkedOut } from '../../computations/work-out/index.ts';
import type { UnitSystem } from '../../quantities/index.ts';
import { BASE_UNITS, sayNumber } from './say-value.ts';

/** A publication as it is named under a result. */
export interface SourceTitle {
  readonly id: string;
  readonly title: string;
  readonly status: string;
}

const statusWords: Readonly<Record<WorkedOut['status'], string>> = {
  read: 'read in the source itself',
  reported: 'seen where the source is quoted or reported',
  practice: 'common practice, no source',
  memory: 'in part from memory',
};

/** A result in plain words, one value a line. */
export function resultText(
  computation: Computation,
  result: WorkedOut,
  units: UnitSystem,
  sources: readonly SourceTitle[],
): string {
  const said = (one: { value: number; dimension: WorkedOut['values'][number]['dimension'] }) =>
    sayNumber(one.value, one.dimension, units);
  const section = (title: string, lines: readonly string[]) =>
    lines.length > 0 ? [`\n${title}`, ...lines.map((line) => `  ${line}`)] : [];
  return [
    computation.title,
    ...result.values.map((one) => `  ${one.label}: ${said(one)}`),
    ...section(
      'To buy',
      result.shopping.map((one) => `${one.label}: ${one.count}`),
    ),
    ...section(
      'Taken for granted',
      result.assumptions.map((one) => `${one.label}: ${said(one)} (${one.status})`),
    ),
    ...section(
      'Mind',
      result.notes.map((note) => NOTES[note]),
    ),
    ...section('Sources', [
      ...sources.map((one) => `${one.title} (${one.status})`),
      `How well it is known: ${statusWords[result.status]}.`,
    ]),
  ].join('\n');
}

/** A result as plain data: numbers in base units, and as they are said. */
export function resultData(
  computation: Computation,
  inputs: Inputs,
  result: WorkedOut,
  units: UnitSystem,
): object {
  const value = <T extends WorkedOut['values'][number]>(one: T) => ({
    ...one,
    unit: BASE_UNITS[one.dimension],
    said: sayNumber(one.value, one.dimension, units),
  });
  return {
    kind: result.kind,
    computation: computation.id,
    title: computation.title,
    inputs,
    values: result.values.map(value),
    assumptions: result.assumptions.map(value),
    shopping: result.shopping.map((one) => ({ ...one, unit: BASE_UNITS[one.dimension] })),
    notes: result.notes.map((note) => ({ id: note, text: NOTES[note] })),
    sources: result.sources,
    status: result.status,
  };
}

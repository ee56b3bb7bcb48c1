import {
  allowedText,
  COMPUTATIONS,
  type Computation,
  type InputDef,
} from '../../computations/work-out/index.ts';
import type { UnitSystem } from '../../quantities/index.ts';
import { CONVERSIONS } from '../../quantities/index.ts';
import { exampleLine } from './examples.ts';
import type { SourceTitle } from './say-result.ts';
import { sayNumber } from './say-value.ts';

const groupTitles: Readonly<Record<Computation['group'], string>> = {
  vents: 'Vents',
  heat: 'Flame and heat',
  plants: 'Slope, plants and trees',
  zones: 'Zones on the ground',
  supplies: 'What to buy',
};

/** The list of all computations. */
export function listText(): string {
  const width = Math.max(...COMPUTATIONS.map(({ id }) => id.length));
  const groups = Object.entries(groupTitles).map(([group, title]) => {
    const lines = COMPUTATIONS.filter((one) => one.group === group).map(
      (one) => `  ${one.id.padEnd(width)}  ${one.title}`,
    );
    return [title, ...lines].join('\n');
  });
  const use = [
    'Usage: roofdown work-out <computation> --name value … [--units imperial|metric] [--json]',
    'More: roofdown work-out <computation> --help',
  ];
  return `${use.join('\n')}\n\n${groups.join('\n\n')}\n\nExample:\n  ${exampleLine('gravel')}\n`;
}

function inputText(input: InputDef, units: UnitSystem): string {
  const value = 'default' in input ? input.default : undefined;
  const usual =
    typeof value === 'number' && input.kind === 'quantity' ? sayNumber(value, input.dimension, units) : value;
  const when = input.required ? 'needed' : usual === undefined ? 'optional' : `${usual} unless said`;
  const bare =
    input.kind === 'quantity' && CONVERSIONS[input.units[units]].symbol !== ''
      ? ` A bare number is in ${CONVERSIONS[input.units[units]].symbol}.`
      : '';
  return `  --${input.id}\n      ${input.label} (${when})\n      Allowed: ${allowedText(input)}.${bare}`;
}

/** The help of one computation: inputs with units and allowed range, sources, an example. */
export function helpText(
  computation: Computation,
  units: UnitSystem,
  sources: readonly SourceTitle[],
): string {
  return [
    `${computation.title}\n`,
    `Usage: roofdown work-out ${computation.id} --name value … [--units imperial|metric] [--json]\n`,
    'Inputs',
    ...computation.inputs.map((input) => inputText(input, units)),
    '\nSources',
    ...sources.map((one) => `  ${one.title} (${one.status})`),
    `\nExample:\n  ${exampleLine(computation.id)}\n`,
  ].join('\n');
}

import type { WhatIfOptions } from './planning/run-what-if.ts';
import type { Register } from './register.ts';

/** Values of an option that may be given again and again, or several with commas. */
const several = (value: string, before: string[]): string[] => [
  ...before,
  ...value
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== ''),
];
const oneMore = (value: string, before: string[]): string[] => [...before, value];

/** `what-if`: the list with jobs supposed done or answers supposed other; the walk itself is not touched. */
export const registerWhatIf: Register = (program, io, outcome) => {
  program
    .command('what-if')
    .description('suppose that jobs are done or answers are others, and see the list move; changes no walk')
    .argument('[house]', 'an answer file, or the id of a walk; without it the newest walk')
    .option(
      '--done <jobs>',
      'jobs supposed done, such as mesh-vents or mesh-vents@left; may be given again',
      several,
      [],
    )
    .option(
      '--set <question=answer>',
      'an answer supposed, as in an answer file; may be given again',
      oneMore,
      [],
    )
    .option('--format <format>', 'text, markdown, html or json', 'text')
    .addHelpText(
      'after',
      "\nExamples:\n  roofdown what-if house.yaml --done take-out-shrubs,rake-leaves\n  roofdown what-if 3f2a --set openings.glass=tempered --set 'zone0.leaves={ front: no }'\n",
    )
    .action(async (house: string | undefined, options: WhatIfOptions) => {
      const { runWhatIf } = await import('./planning/run-what-if.ts');
      outcome.exitCode = await runWhatIf(io, house, options);
    });
};

import type { Register } from './register.ts';

/** `compare`: two states of a house side by side. */
export const registerCompare: Register = (program, io, outcome) => {
  program
    .command('compare')
    .description('before and after: ways in closed, opened and unchanged')
    .argument('[first]', 'an answer file, or the id of a walk; without it the newest walk')
    .argument(
      '[second]',
      'another; without it a walk is compared with how it was before anything was marked as done',
    )
    .option('--format <format>', 'text, markdown, html or json', 'text')
    .addHelpText(
      'after',
      '\nExamples:\n  roofdown compare\n  roofdown compare spring.yaml autumn.yaml --format markdown\n',
    )
    .action(async (first: string | undefined, second: string | undefined, options: { format: string }) => {
      const { runCompare } = await import('./planning/run-compare.ts');
      outcome.exitCode = await runCompare(io, [first, second], options);
    });
};

import type { DoneOptions } from './planning/run-done.ts';
import type { Register } from './register.ts';

/** `done`: marks jobs of a kept walk as done, and shows what that changed. */
export const registerDone: Register = (program, io) => {
  program
    .command('done')
    .description(
      'mark jobs of a walk as done: the list goes on from there, and "compare" shows before and after',
    )
    .argument('<jobs...>', 'jobs, such as mesh-vents or mesh-vents@left')
    .option('--walk <id>', 'the walk; without it the newest')
    .option('--date <day>', 'the day, as 2026-06-12; without it today')
    .option('--undo', 'take the marks back')
    .option('--format <format>', 'text, markdown, html or json', 'text')
    .addHelpText('after', '\nExample:\n  roofdown done take-out-mulch@front rake-leaves --date 2026-05-30\n')
    .action(async (jobs: string[], options: DoneOptions) => {
      const { runDone } = await import('./planning/run-done.ts');
      await runDone(io, jobs, options);
    });
};

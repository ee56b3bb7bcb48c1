import { homedir } from 'node:os';
import { Command, CommanderError } from 'commander';
import { registerCheckFlows } from './commands/check-flows.ts';
import type { CommandIo } from './commands/io.ts';
import { registerPicture } from './commands/picture.ts';
import { ProgramError } from './commands/program-error.ts';
import { registerQuestions } from './commands/questions.ts';
import { registerSchema } from './commands/schema.ts';
import { registerSheet } from './commands/sheet.ts';
import { registerWalk } from './commands/walk.ts';
import { registerWalks } from './commands/walks.ts';
import { version } from './settings.ts';

const io: CommandIo = {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  home: homedir(),
  clock: () => new Date(),
};

/** A command sets this when it ends well with another meaning: 3 after an order to leave. */
const outcome = { exitCode: 0 };

function build(): Command {
  const program = new Command('roofdown')
    .description(
      'Walks round one house from the roof down to the yard, finds where wildfire gets in, and says what to do first.',
    )
    .version(version)
    .exitOverride()
    .configureHelp({ showGlobalOptions: true })
    .addHelpText('after', '\nIf you see smoke or flame, or are told to leave: leave, then call for help.\n');
  for (const register of [
    registerWalk,
    registerQuestions,
    registerCheckFlows,
    registerPicture,
    registerSchema,
    registerWalks,
    registerSheet,
  ]) {
    register(program, io, outcome);
  }
  return program;
}

/** A person's mistake is one line on stderr and exit 2; a fault of ours is one line and exit 1; never a stack. */
function report(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`roofdown: ${message}\n`);
  if (error instanceof ProgramError) return error.exitCode;
  if (process.env['ROOFDOWN_DEBUG'] && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  return 1;
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  await build().parseAsync(process.argv);
  process.exitCode = outcome.exitCode;
} catch (error) {
  process.exitCode = report(error);
}

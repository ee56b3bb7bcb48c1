import { Command, CommanderError } from 'commander';
import { version } from '../settings.ts';
import { registerAgree } from './agree.ts';
import { registerCheckFlows } from './check-flows.ts';
import { registerCompare } from './compare.ts';
import { registerDone } from './done.ts';
import { type CommandIo, write } from './io.ts';
import { registerPicture } from './picture.ts';
import { registerPractise } from './practise.ts';
import { ProgramError } from './program-error.ts';
import { registerQuestions } from './questions.ts';
import type { Outcome, Register } from './register.ts';
import { registerSchema } from './schema.ts';
import { registerServe } from './serve.ts';
import { registerSheet } from './sheet.ts';
import { registerWalk } from './walk.ts';
import { registerWalks } from './walks.ts';
import { registerWhatIf } from './what-if.ts';
import { registerWorkOut } from './work-out.ts';

/** Every command, in the order of the help. */
const commands: readonly Register[] = [
  registerWalk,
  registerWalks,
  registerWhatIf,
  registerDone,
  registerCompare,
  registerSheet,
  registerWorkOut,
  registerPractise,
  registerAgree,
  registerQuestions,
  registerCheckFlows,
  registerPicture,
  registerSchema,
  registerServe,
];

function buildProgram(io: CommandIo, outcome: Outcome): Command {
  const program = new Command('roofdown')
    .description(
      'Walks round one house from the roof down to the yard, finds where wildfire gets in, and says what to do first.',
    )
    .version(version)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(text),
    })
    .addHelpText('after', '\nIf you see smoke or flame, or are told to leave: leave, then call for help.\n');
  for (const register of commands) register(program, io, outcome);
  return program;
}

/** A person's mistake is a line on stderr and exit 2; a fault of ours a line and exit 1; never a stack. */
async function sayError(io: CommandIo, error: unknown): Promise<number> {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  const message = error instanceof Error ? error.message : String(error);
  await write(io.stderr, `roofdown: ${message}\n`);
  if (error instanceof ProgramError) return error.exitCode;
  if (io.env['ROOFDOWN_DEBUG'] && error instanceof Error) await write(io.stderr, `${error.stack}\n`);
  return 1;
}

/** Runs a command line; returns its exit code. */
export async function runProgram(argv: readonly string[], io: CommandIo): Promise<number> {
  const outcome: Outcome = { exitCode: 0 };
  try {
    await buildProgram(io, outcome).parseAsync([...argv], { from: 'user' });
    return outcome.exitCode;
  } catch (error) {
    return sayError(io, error);
  }
}

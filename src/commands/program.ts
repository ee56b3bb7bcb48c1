import { Command, CommanderError } from 'commander';
import { version } from '../settings.ts';
import { type CommandIo, write } from './io.ts';
import { ProgramError } from './program-error.ts';
import type { Outcome, Register } from './register.ts';

/** Every command, in the order of the help; each is loaded when it is wanted, so that a walk starts fast. */
const commands: Readonly<Record<string, () => Promise<Register>>> = {
  walk: async () => (await import('./walk.ts')).registerWalk,
  call: async () => (await import('./call/call.ts')).registerCall,
  walks: async () => (await import('./walks.ts')).registerWalks,
  'what-if': async () => (await import('./what-if.ts')).registerWhatIf,
  done: async () => (await import('./done.ts')).registerDone,
  compare: async () => (await import('./compare.ts')).registerCompare,
  sheet: async () => (await import('./sheet.ts')).registerSheet,
  'work-out': async () => (await import('./work-out.ts')).registerWorkOut,
  practise: async () => (await import('./practise.ts')).registerPractise,
  agree: async () => (await import('./agree.ts')).registerAgree,
  questions: async () => (await import('./questions.ts')).registerQuestions,
  'check-flows': async () => (await import('./check-flows.ts')).registerCheckFlows,
  picture: async () => (await import('./picture.ts')).registerPicture,
  schema: async () => (await import('./schema.ts')).registerSchema,
  serve: async () => (await import('./serve.ts')).registerServe,
};

/** The commands that a command line needs: the one it names, the walk when it names none, all for help or a mistake. */
function wanted(argv: readonly string[]): (() => Promise<Register>)[] {
  const [first] = argv;
  const named = first !== undefined && Object.hasOwn(commands, first) ? commands[first] : undefined;
  if (named) return [named];
  const plainWalk = argv.length === 0 || ['--plain', '--new'].includes(first ?? '');
  return plainWalk && commands['walk'] ? [commands['walk']] : Object.values(commands);
}

async function buildProgram(argv: readonly string[], io: CommandIo, outcome: Outcome): Promise<Command> {
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
  for (const load of wanted(argv)) (await load())(program, io, outcome);
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
    const program = await buildProgram(argv, io, outcome);
    await program.parseAsync([...argv], { from: 'user' });
    return outcome.exitCode;
  } catch (error) {
    return sayError(io, error);
  }
}

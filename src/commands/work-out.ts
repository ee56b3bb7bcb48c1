import type { Computation, WorkOutcome } from '../computations/work-out/index.ts';
import { type CommandIo, write } from './io.ts';
import { ProgramError } from './program-error.ts';
import type { Outcome, Register } from './register.ts';
import type { TypedArguments } from './work-out/read-arguments.ts';
import type { SourceTitle } from './work-out/say-result.ts';

/** `work-out`: one computation alone. Its inputs are options of their own, so that this command sorts its words itself. */
export const registerWorkOut: Register = (program, io, outcome) => {
  program
    .command('work-out')
    .description('work out one thing by itself: vents, heat, slope and spacing, zones, what to buy')
    .argument('[computation]', 'which one; without it, the list of all')
    .argument('[inputs...]', 'its inputs, as --name value')
    .helpOption(false)
    .allowUnknownOption()
    .action(async (_id: string | undefined, _inputs: readonly string[], _options: object, command) => {
      await workOut(command.args as readonly string[], io, outcome);
    });
};

async function workOut(words: readonly string[], io: CommandIo, outcome: Outcome): Promise<void> {
  const { sortArguments, readInputs } = await import('./work-out/read-arguments.ts');
  const given = sortArguments(words);
  if (given.id === undefined) {
    const { listText } = await import('./work-out/say-help.ts');
    return write(io.stdout, given.json ? await listData() : listText());
  }
  const computation = await find(given.id);
  if (given.help) return write(io.stdout, await help(computation, given));
  const read = readInputs(computation, given);
  const worked = read.kind === 'read' ? computation.run(read.inputs) : read;
  if (worked.kind !== 'result') return refuse(worked, given, io, outcome);
  const { resultData, resultText } = await import('./work-out/say-result.ts');
  if (given.json && read.kind === 'read') {
    const data = resultData(computation, read.inputs, worked, given.units);
    return write(io.stdout, `${JSON.stringify(data, null, 2)}\n`);
  }
  const titles = await titlesOf(worked.sources);
  return write(io.stdout, `${resultText(computation, worked, given.units, titles)}\n`);
}

/** With `--json` a refusal is data too; it never holds a number that was worked out. */
async function refuse(
  refused: Exclude<WorkOutcome, { kind: 'result' }>,
  given: TypedArguments,
  io: CommandIo,
  outcome: Outcome,
): Promise<void> {
  if (given.json) {
    outcome.exitCode = 2;
    return write(io.stdout, `${JSON.stringify(refused, null, 2)}\n`);
  }
  const { field, allowed } = refused;
  if (refused.kind === 'badInput') {
    const problem = /[.?!]$/.test(refused.problem) ? refused.problem : `${refused.problem}.`;
    throw new ProgramError(`--${field}: ${problem} Allowed: ${allowed}.`);
  }
  throw new ProgramError(`--${field}: ${refused.message}. It covers ${allowed}.`);
}

async function find(id: string): Promise<Computation> {
  const { COMPUTATIONS, findComputation } = await import('../computations/work-out/index.ts');
  const found = findComputation(id);
  if (found !== undefined) return found;
  const { didYouMean } = await import('../flow/did-you-mean.ts');
  const hint = didYouMean(
    id,
    COMPUTATIONS.map((one) => one.id),
  );
  throw new ProgramError(
    `There is no computation "${id}". ${hint ?? 'Say "roofdown work-out" for the list.'}`,
  );
}

async function listData(): Promise<string> {
  const { COMPUTATIONS } = await import('../computations/work-out/index.ts');
  const list = COMPUTATIONS.map(({ id, title, group, inputs }) => ({ id, title, group, inputs }));
  return `${JSON.stringify(list, null, 2)}\n`;
}

async function titlesOf(ids: readonly string[]): Promise<SourceTitle[]> {
  const { loadProgramme } = await import('./load-programme.ts');
  const { flow } = (await loadProgramme()).checklist;
  return [...new Set(ids)].flatMap((id) => flow.sources.filter((one) => one.id === id));
}

/** The sources that a computation names are those of its example. */
async function help(computation: Computation, given: TypedArguments): Promise<string> {
  const [{ EXAMPLES }, { helpText }, { sortArguments, readInputs }] = await Promise.all([
    import('./work-out/examples.ts'),
    import('./work-out/say-help.ts'),
    import('./work-out/read-arguments.ts'),
  ]);
  const read = readInputs(computation, sortArguments(EXAMPLES[computation.id] ?? []));
  const worked = read.kind === 'read' ? computation.run(read.inputs) : read;
  const titles = await titlesOf(worked.kind === 'result' ? worked.sources : []);
  return helpText(computation, given.units, titles);
}

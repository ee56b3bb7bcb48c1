import type { Checklist } from '../assess/checklist.ts';
import type { WalkStore } from '../conversation/ports.ts';
import { unitsOf } from '../conversation/units.ts';
import { findWalk } from './find-walk.ts';
import type { CommandIo } from './io.ts';
import { write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import { openStore } from './open-store.ts';
import { addBudgetOptions, type BudgetOptions, limitsOf } from './planning/budget-options.ts';
import { ProgramError } from './program-error.ts';
import type { Register } from './register.ts';

async function withStore(
  io: CommandIo,
  use: (store: WalkStore, checklist: Checklist) => Promise<void>,
): Promise<void> {
  const { checklist } = await loadProgramme();
  const store = openStore(io, checklist);
  try {
    await use(store, checklist);
  } finally {
    await store.close();
  }
}

async function load(store: WalkStore, typed: string) {
  const { id } = await findWalk(store, typed);
  const record = await store.load(id);
  if (!record) throw new ProgramError(`The walk ${id} is gone.`);
  return record;
}

/** `walks`: the walks kept on this machine. */
export const registerWalks: Register = (program, io) => {
  const walks = program
    .command('walks')
    .description('list, show, export or delete the walks kept on this machine');
  walks
    .command('list', { isDefault: true })
    .description('one line for each walk, the newest first')
    .addHelpText('after', '\nExample:\n  roofdown walks list\n')
    .action(() =>
      withStore(io, async (store) => {
        const list = await store.list();
        const lines = list.map((one) =>
          `${one.id.slice(0, 8)}  ${one.updatedAt.slice(0, 10)}  ${one.phase.padEnd(9)}  ${String(one.answered).padStart(3)} answers  ${one.label ?? ''}`.trimEnd(),
        );
        await write(
          io.stdout,
          list.length > 0
            ? `${lines.join('\n')}\n`
            : 'No walk is kept here yet. "roofdown walk" begins one.\n',
        );
      }),
    );
  addBudgetOptions(walks.command('show <id>'))
    .description('the report of a walk as it stands')
    .option('--format <format>', 'text, markdown, html or json', 'text')
    .addHelpText('after', '\nExample:\n  roofdown walks show 3f2a --format html > house.html\n')
    .action((typed: string, options: BudgetOptions & { format: string }) =>
      withStore(io, async (store, checklist) => {
        const record = await load(store, typed);
        const [{ makeReport }, { readFormat }, { withOwnPrices }] = await Promise.all([
          import('./make-report.ts'),
          import('./read-format.ts'),
          import('./planning/own-prices.ts'),
        ]);
        const format = readFormat(options.format);
        const limits = limitsOf(options);
        await write(
          io.stdout,
          makeReport(withOwnPrices(checklist, options), record, new Date(record.updatedAt), format, {
            width: io.stdout.columns ?? 80,
            limits,
          }),
        );
      }),
    );
  walks
    .command('export <id>')
    .description('the answers of a walk as YAML, to be read again with "walk --answers"')
    .addHelpText('after', '\nExample:\n  roofdown walks export 3f2a > house.yaml\n')
    .action((typed: string) =>
      withStore(io, async (store, checklist) => {
        const record = await load(store, typed);
        const { answersAsYaml } = await import('../files/write-answers.ts');
        await write(
          io.stdout,
          answersAsYaml(checklist, record.sheet, unitsOf(checklist, record.sheet, record.units)),
        );
      }),
    );
  walks
    .command('delete <id>')
    .description('delete a walk for good')
    .option('--yes', 'do not ask once more')
    .addHelpText('after', '\nExample:\n  roofdown walks delete 3f2a --yes\n')
    .action((typed: string, options: { yes?: boolean }) =>
      withStore(io, async (store) => {
        const { id, label } = await findWalk(store, typed);
        if (!options.yes) {
          throw new ProgramError(
            `This deletes the walk ${id}${label === undefined ? '' : ` (${label})`} with all its answers. Say it again with --yes.`,
          );
        }
        const left = (await store.load(id))?.call?.wasLeft;
        await store.remove(id);
        const waits = left
          ? 'A copy that was handed over may wait at the chat service until its time is over.\n'
          : '';
        await write(io.stdout, `Deleted: ${id}\n${waits}`);
      }),
    );
};

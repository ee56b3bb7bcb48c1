import type { WalkId } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { TerminalConversation, TerminalEnd } from '../terminal/ports.ts';
import { askBudget } from './ask-budget.ts';
import { converse } from './converse.ts';
import { findWalk } from './find-walk.ts';
import type { CommandIo } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import { newWalkId, offerToGoOn } from './offer-to-go-on.ts';
import { openStore } from './open-store.ts';
import { addBudgetOptions, type BudgetOptions } from './planning/budget-options.ts';
import { type ReaderOptions, readerOf } from './reader-options.ts';
import type { Register } from './register.ts';
import { terminalConversation } from './terminal-conversation.ts';
import { wordingFor } from './wording-for.ts';

interface WalkOptions extends ReaderOptions, BudgetOptions {
  readonly answers?: string;
  readonly format?: string;
  readonly plain?: boolean;
  readonly new?: boolean;
  readonly walk?: string;
}

/** The exit code of a walk that ended with the order to leave. */
const toldToLeave = 3;

/** `walk`, the command when none is named: the conversation in the terminal, or headless with an answer file. */
export const registerWalk: Register = (program, io, outcome) => {
  addBudgetOptions(program.command('walk', { isDefault: true }))
    .description('walk round a house in the terminal; goes on where it stopped')
    .option(
      '--answers <file>',
      'no conversation: read the answers from a YAML or JSON file and print the report',
    )
    .option('--format <format>', 'with --answers: text, markdown, html or json', 'text')
    .option('--plain', 'lines only, for screen readers, pipes and simple terminals')
    .option('--new', 'begin a new walk, whatever is kept')
    .option('--walk <id>', 'go on with this walk (see "roofdown walks list")')
    .option('--units <units>', 'imperial or metric')
    .option('--audience <audience>', 'resident, volunteer or trainee')
    .addHelpText(
      'after',
      '\nExamples:\n  roofdown walk\n  roofdown walk --answers house.yaml --format markdown > house.md\n',
    )
    .action(async (options: WalkOptions) => {
      if (options.answers !== undefined) {
        const { runHeadless } = await import('./headless.ts');
        outcome.exitCode = await runHeadless(io, { ...options, answers: options.answers });
        return;
      }
      const end = await walkInTerminal(io, options);
      if (end === 'emergency') outcome.exitCode = toldToLeave;
    });
};

async function walkInTerminal(io: CommandIo, options: WalkOptions): Promise<TerminalEnd> {
  const programme = await loadProgramme();
  const { checklist } = programme;
  const store = openStore(io, checklist);
  try {
    const shell: Shell = { programme, store, clock: io.clock };
    const conversation = await chooseConversation(shell, io, options);
    const wording = wordingFor(checklist, {
      sheet: {},
      language: checklist.flow.walk.language,
      audience: 'resident',
    });
    return await converse(conversation, io, options.plain, (id, values) => wording.text(id, values));
  } finally {
    await store.close();
  }
}

async function chooseConversation(
  shell: Shell,
  io: CommandIo,
  options: WalkOptions,
): Promise<TerminalConversation> {
  const width = () => Math.min(io.stdout.columns ?? 80, 80);
  const reader = readerOf(options);
  const open = (id: WalkId) => askBudget(shell, id, terminalConversation(shell, id, width, reader), width);
  if (options.walk !== undefined) return open((await findWalk(shell.store, options.walk)).id);
  const kept = options.new
    ? undefined
    : (await shell.store.list()).find((one) => one.phase !== 'finished' && one.answered > 0);
  return kept ? offerToGoOn(shell, io, kept, open) : open(newWalkId(io));
}

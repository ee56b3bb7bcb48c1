import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { sayKappa } from '../practice/debrief/say-kappa.ts';
import { exportCsv } from '../practice/export-csv.ts';
import { dueCards } from '../practice/memory/schedule.ts';
import { newProgress, type ProgressStore, type TraineeProgress } from '../practice/progress.ts';
import { newSession } from '../practice/session/state.ts';
import { dataFolderPath } from '../storage/data-folder.ts';
import { createProgressStore } from '../storage/practice/progress-store.ts';
import type { Phrase, TerminalEnd } from '../terminal/ports.ts';
import type { Wording } from '../wording/wording.ts';
import { converse } from './converse.ts';
import { type CommandIo, write } from './io.ts';
import { chooseHouse, type HouseOptions } from './practice/choose-house.ts';
import { loadPractice, practiceWording } from './practice/load-practice.ts';
import {
  type PracticeShell,
  practiceConversation,
  questionConversation,
} from './practice/practice-conversation.ts';
import { ProgramError } from './program-error.ts';
import type { Register } from './register.ts';

interface PractiseOptions extends HouseOptions {
  readonly as: string;
  readonly part?: string;
  readonly plain?: boolean;
  readonly new?: boolean;
}

const toldToLeave = 3;

/** The words of the terminal itself, with those of practice where it has its own. */
const phraseOf =
  (wording: Wording): Phrase =>
  (id, values) =>
    wording.text(wording.has(`practice.${id}`) ? `practice.${id}` : id, values);

const storeOf = (io: CommandIo): ProgressStore =>
  createProgressStore(join(dataFolderPath({ env: io.env, home: io.home }), 'practice'));

async function progressOf(store: ProgressStore, trainee: string): Promise<TraineeProgress> {
  return (await store.load(trainee)) ?? newProgress(trainee);
}

function checkPart(shell: PracticeShell, part: string | undefined): void {
  const { stops } = shell.practice.programme.checklist.flow;
  if (part === undefined || stops.some((stop) => stop.id === part)) return;
  throw new ProgramError(
    `There is no part "${part}". Say one of: ${stops.map((stop) => stop.id).join(', ')}.`,
  );
}

/** Goes on with an open session, unless another house or part is asked for. */
async function walkAtHouse(io: CommandIo, options: PractiseOptions): Promise<TerminalEnd> {
  const practice = await loadPractice();
  const shell: PracticeShell = { practice, store: storeOf(io), clock: io.clock };
  checkPart(shell, options.part);
  const progress = await progressOf(shell.store, options.as);
  const fresh =
    options.new || options.house !== undefined || options.part !== undefined || options.level !== undefined;
  const open = fresh ? undefined : progress.open;
  const state =
    open ??
    newSession(chooseHouse(practice, options, progress.sessions.length + 1), io.clock(), options.part);
  const wording = practiceWording(practice, state.house.sheet);
  return converse(practiceConversation(shell, progress, state), io, options.plain, phraseOf(wording));
}

async function askQuestions(io: CommandIo, options: PractiseOptions): Promise<TerminalEnd> {
  const practice = await loadPractice();
  const shell: PracticeShell = { practice, store: storeOf(io), clock: io.clock };
  const progress = await progressOf(shell.store, options.as);
  const wording = practiceWording(practice, {});
  if (dueCards(progress.cards, io.clock()).length === 0) {
    await write(io.stdout, `${wording.text('practice.questions.none')}\n`);
    return 'finished';
  }
  return converse(questionConversation(shell, progress), io, options.plain, phraseOf(wording));
}

async function showProgress(io: CommandIo, options: PractiseOptions): Promise<void> {
  const practice = await loadPractice();
  const wording = practiceWording(practice, {});
  const progress = await storeOf(io).load(options.as);
  if (!progress) {
    await write(io.stdout, `${wording.text('practice.progress.none', { trainee: options.as })}\n`);
    return;
  }
  const sessions = progress.sessions.map(({ endedAt, debrief }) => {
    const { caught, missed, invented } = debrief.findings;
    const kappa = sayKappa(debrief.kappa);
    return wording.text('practice.progress.session', {
      date: endedAt.slice(0, 10),
      house: debrief.house,
      caught: caught.length,
      all: caught.length + missed.length,
      invented: invented.length,
      kappa: { text: kappa.text, values: kappa.values ?? {} },
    });
  });
  const due = dueCards(progress.cards, io.clock()).length;
  const lines = [
    wording.text('practice.progress.title', { trainee: progress.trainee }),
    ...sessions,
    ...(due > 0 ? [wording.text('practice.questions.due', { count: due })] : []),
    wording.text('practice.progress.consent', { consent: progress.consent ? 'yes' : 'no' }),
  ];
  await write(io.stdout, `${lines.join('\n')}\n`);
}

/** The debriefs of those who agreed, for a supervisor; to a file with `--out`. */
async function exportDebriefs(io: CommandIo, out: string | undefined): Promise<void> {
  const all = await storeOf(io).list();
  const agreed = all.filter((progress) => progress.consent).length;
  const csv = exportCsv(all);
  if (out === undefined) await write(io.stdout, csv);
  else writeFileSync(out, csv, { mode: 0o600 });
  await write(
    io.stderr,
    `${agreed} of ${all.length} trainees agreed to the export; the others are left out.\n`,
  );
}

async function setConsent(io: CommandIo, trainee: string, word: string): Promise<void> {
  if (word !== 'yes' && word !== 'no')
    throw new ProgramError(`Say "consent yes" or "consent no", not "${word}".`);
  const store = storeOf(io);
  const progress = await progressOf(store, trainee);
  await store.save({ ...progress, consent: word === 'yes', revision: progress.revision + 1 });
  await write(
    io.stdout,
    word === 'yes'
      ? 'A supervisor may now export the debriefs.\n'
      : 'The debriefs are not exported any more.\n',
  );
}

async function forget(io: CommandIo, trainee: string): Promise<void> {
  const gone = await storeOf(io).remove(trainee);
  await write(
    io.stdout,
    gone ? `Everything kept of ${trainee} is gone.\n` : `Nothing was kept of ${trainee}.\n`,
  );
}

const whose = ['--as <name>', 'whose practice it is, kept apart on this machine', 'me'] as const;

/** Commands beside the walk itself. */
function registerRest(practise: Command, io: CommandIo, leave: (end: TerminalEnd) => void): void {
  const merged = (command: Command) => command.optsWithGlobals() as PractiseOptions;
  practise
    .command('questions')
    .description('answer the questions that are due: facts that went wrong, spaced in time')
    .action(async (_: unknown, command: Command) => leave(await askQuestions(io, merged(command))));
  practise
    .command('progress')
    .description('what was practised, and what is due')
    .action((_: unknown, command: Command) => showProgress(io, merged(command)));
  practise
    .command('export')
    .description('for a supervisor: the debriefs of those who agreed, as CSV')
    .option('--out <file>', 'write to a file instead of standard output')
    .action((options: { out?: string }) => exportDebriefs(io, options.out));
  practise
    .command('consent')
    .description('agree, or no longer agree, that a supervisor exports your debriefs')
    .argument('<word>', 'yes or no')
    .action((word: string, _: unknown, command: Command) => setConsent(io, merged(command).as, word));
  practise
    .command('forget')
    .description('remove everything kept of a trainee')
    .action((_: unknown, command: Command) => forget(io, merged(command).as));
}

/** `practise`: the program plays the house and the resident, the trainee leads the walk and hears a debrief. */
export const registerPractise: Register = (program, io, outcome) => {
  const leave = (end: TerminalEnd) => {
    if (end === 'emergency') outcome.exitCode = toldToLeave;
  };
  const practise = program
    .command('practise')
    .description('practise a walk: the program plays the house and the resident, and debriefs you')
    .option(...whose)
    .option('--house <house>', 'a number for a made-up house, or an answer file of your own')
    .option('--key <file>', "with a file: a supervisor's own list of findings")
    .option('--level <level>', 'easy, ordinary or hard')
    .option('--part <stop>', 'one part of the walk alone, such as vents')
    .option('--place <place>', 'whose rules hold at a made-up house')
    .option('--new', 'begin another house, whatever is open')
    .option('--plain', 'lines only, for screen readers, pipes and simple terminals')
    .addHelpText(
      'after',
      '\nExamples:\n  roofdown practise\n  roofdown practise --house 41 --level hard\n  roofdown practise --house house.yaml --key key.yaml\n  roofdown practise questions\n  roofdown practise export --out debriefs.csv\n',
    )
    .action(async (options: PractiseOptions) => leave(await walkAtHouse(io, options)));
  registerRest(practise, io, leave);
};

import type { WalkId } from '../../conversation/record.ts';
import type { Shell } from '../../conversation/shell.ts';
import type { Phrase, TerminalEnd } from '../../terminal/ports.ts';
import { converse } from '../converse.ts';
import { type CommandIo, write } from '../io.ts';
import { loadProgramme } from '../load-programme.ts';
import { openStore } from '../open-store.ts';
import { ProgramError } from '../program-error.ts';
import type { Register } from '../register.ts';
import { wordingFor } from '../wording-for.ts';
import { type ChatService, openChatService } from './chat-service.ts';
import { type CallChoice, chooseCall } from './choose-call.ts';

interface CallOptions extends CallChoice {
  readonly minutes?: string;
  readonly plain?: boolean;
  readonly server?: string;
  readonly takeOver?: string;
}

/** The exit code of a call that ended with the order to leave. */
const toldToLeave = 3;

const mostMinutes = 120;

/** `call`: a volunteer guides a caller round the house, by phone. */
export const registerCall: Register = (program, io, outcome) => {
  program
    .command('call')
    .description(
      'guide a caller round their house: what to say, what to listen for; goes on after a dropped call',
    )
    .option('--minutes <minutes>', 'how long the call may take: what can change the list most is asked first')
    .option('--for <organisation>', 'on whose behalf you call; read out at the start')
    .option('--plain', 'lines only, for screen readers, pipes and simple terminals')
    .option('--new', 'begin a new call, whatever is kept')
    .option('--walk <id>', 'go on with this call (see "roofdown walks list")')
    .option('--server <address>', 'the chat service that can take the call over: "hand over" gives a code')
    .option('--take-over <code>', 'go on with the call that somebody handed over; needs --server')
    .option('--units <units>', 'imperial or metric')
    .addHelpText(
      'after',
      '\nThe answers, your notes and a number to call back stay in a file on this computer.\n' +
        'The number is erased when the call is closed. With --server, and if the caller agrees, they are sent there\n' +
        'and wait for whoever has the code. Requests are signed with ROOFDOWN_SECRET.\n\n' +
        'Examples:\n  roofdown call --minutes 8 --for "the Quillan Bend Fire District"\n  roofdown call --new\n' +
        '  roofdown call --server https://walks.example.org --take-over "4829-1530-6712"\n',
    )
    .action(async (options: CallOptions) => {
      refuseTwoCalls(options);
      const end = await callInTerminal(io, options, minutesOf(options));
      if (end === 'emergency') outcome.exitCode = toldToLeave;
    });
};

/** Options that name two calls at once. */
function refuseTwoCalls({ takeOver, new: fresh, walk }: CallOptions): void {
  if (takeOver !== undefined && (fresh || walk !== undefined))
    throw new ProgramError(
      `--take-over names a call, and ${fresh ? '--new' : '--walk'} another. Give one of them.`,
    );
}

function minutesOf({ minutes }: CallOptions): number | undefined {
  if (minutes === undefined) return undefined;
  const number = /^\d{1,3}$/.test(minutes) ? Number(minutes) : 0;
  if (number < 1 || number > mostMinutes)
    throw new ProgramError(`--minutes ${minutes} is not known. Say whole minutes from 1 to ${mostMinutes}.`);
  return number;
}

async function callInTerminal(
  io: CommandIo,
  options: CallOptions,
  minutes: number | undefined,
): Promise<TerminalEnd> {
  const programme = await loadProgramme();
  const { checklist } = programme;
  const store = openStore(io, checklist);
  try {
    const service = await serviceOf(io, options);
    const shell: Shell = {
      programme,
      store,
      clock: io.clock,
      ...(service ? { handOvers: service } : {}),
    };
    const opened: { id?: WalkId } = {};
    const taken =
      service && options.takeOver !== undefined ? await service.take(options.takeOver) : undefined;
    const conversation = await chooseCall(shell, io, { options, minutes, opened, taken });
    const reader = { sheet: {}, language: checklist.flow.walk.language, audience: 'volunteer' } as const;
    const wording = wordingFor(checklist, reader);
    const phrase: Phrase = (id, values) => wording.text(id, values);
    const end = await converse(conversation, io, options.plain, phrase, io.clock);
    if (end === 'finished' && opened.id !== undefined) await sayWhere(io, opened.id);
    return end;
  } finally {
    await store.close();
  }
}

/** The chat service that was named; one that is away just now is told, and the call goes on. */
async function serviceOf(io: CommandIo, { server, takeOver }: CallOptions): Promise<ChatService | undefined> {
  if (server !== undefined)
    return openChatService(io, server, async (why) => {
      // Without it there is nothing to take over; its own attempt says so.
      if (takeOver === undefined)
        await write(io.stderr, `${why} The call goes on; "hand over" tries again.\n`);
    });
  if (takeOver !== undefined)
    throw new ProgramError('--take-over needs --server, the address of the chat service.');
  return undefined;
}

/** Where the whole list is, and how it goes away. */
function sayWhere(io: CommandIo, id: WalkId): Promise<void> {
  const short = id.slice(0, 8);
  return write(
    io.stderr,
    `Kept on this computer. The whole list: roofdown walks show ${short}. To erase it: roofdown walks delete ${short}.\n`,
  );
}

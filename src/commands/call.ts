import { carriedOver } from '../conversation/hand-over/take-over.ts';
import { newWalk } from '../conversation/new-walk.ts';
import type { WalkSummary } from '../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { Phrase, TerminalConversation, TerminalEnd } from '../terminal/ports.ts';
import { type ChatService, openChatService } from './chat-service.ts';
import { converse } from './converse.ts';
import { findWalk } from './find-walk.ts';
import { type CommandIo, write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import { newWalkId, offerToGoOn } from './offer-to-go-on.ts';
import { openStore } from './open-store.ts';
import { ProgramError } from './program-error.ts';
import { type ReaderOptions, readerOf } from './reader-options.ts';
import type { Register } from './register.ts';
import { terminalConversation } from './terminal-conversation.ts';
import { wordingFor } from './wording-for.ts';

interface CallOptions extends Pick<ReaderOptions, 'units'> {
  readonly minutes?: string;
  readonly for?: string;
  readonly plain?: boolean;
  readonly new?: boolean;
  readonly walk?: string;
  readonly server?: string;
  readonly takeOver?: string;
}

type Reader = NonNullable<Parameters<typeof newWalk>[3]>;

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
        '  roofdown call --server https://walks.example.org --take-over "4829 1530 6712"\n',
    )
    .action(async (options: CallOptions) => {
      const end = await callInTerminal(io, options, minutesOf(options));
      if (end === 'emergency') outcome.exitCode = toldToLeave;
    });
};

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
    return openChatService(io, server, (why) =>
      write(io.stderr, `${why} The call goes on; "hand over" tries again.\n`),
    );
  if (takeOver !== undefined)
    throw new ProgramError('--take-over needs --server, the address of the chat service.');
  return undefined;
}

/** A call that somebody else handed over, kept here before anything is said. */
async function keepTaken({ programme, store, clock }: Shell, id: WalkId, given: WalkRecord, reader: Reader) {
  const own = newWalk(programme, id, clock(), reader);
  const record = { ...carriedOver(programme, own, given), revision: 1 };
  await store.commit({ record, expected: 'new' });
}

/** Where the whole list is, and how it goes away. */
function sayWhere(io: CommandIo, id: WalkId): Promise<void> {
  const short = id.slice(0, 8);
  return write(
    io.stderr,
    `Kept on this computer. The whole list: roofdown walks show ${short}. To erase it: roofdown walks delete ${short}.\n`,
  );
}

/** The newest call that was not closed; walks that nobody guided are no calls. */
async function droppedCall({ store }: Shell): Promise<WalkSummary | undefined> {
  for (const one of await store.list()) {
    if (one.phase === 'finished' || one.answered === 0) continue;
    if ((await store.load(one.id))?.call) return one;
  }
  return undefined;
}

/** What decides which call is held. */
interface CallStart {
  readonly options: CallOptions;
  readonly minutes: number | undefined;
  /** Told the id of the call that was chosen. */
  readonly opened: { id?: WalkId };
  /** A call that somebody else handed over. */
  readonly taken: WalkRecord | undefined;
}

async function chooseCall(
  shell: Shell,
  io: CommandIo,
  { options, minutes, opened, taken }: CallStart,
): Promise<TerminalConversation> {
  const width = () => Math.min(io.stdout.columns ?? 80, 80);
  const behalf = options.for?.trim();
  const reader = {
    ...readerOf(options.units === undefined ? {} : { units: options.units }),
    audience: 'volunteer' as const,
    call: { ...(behalf ? { behalf } : {}), ...(minutes === undefined ? {} : { minutes }) },
  };
  const open = (id: WalkId) => {
    opened.id = id;
    return withMinutes(terminalConversation(shell, id, width, reader), minutes, async () => {
      const before = await shell.store.load(id);
      return before === undefined ? minutes : before.call?.minutes;
    });
  };
  if (taken) {
    const id = newWalkId(io);
    await keepTaken(shell, id, taken, reader);
    return open(id);
  }
  if (options.walk !== undefined) return open((await findWalk(shell.store, options.walk)).id);
  const kept = options.new ? undefined : await droppedCall(shell);
  return kept ? offerToGoOn(shell, io, kept, open) : open(newWalkId(io));
}

/** A call that goes on takes the minutes of today, as if the volunteer had typed them. */
function withMinutes(
  conversation: TerminalConversation,
  minutes: number | undefined,
  known: () => Promise<number | undefined>,
): TerminalConversation {
  return {
    send: conversation.send,
    hello: async () => {
      const before = await known();
      const first = await conversation.hello();
      if (minutes === undefined || before === minutes) return first;
      const then = await conversation.send({ kind: 'text', text: `minutes ${minutes}` });
      const blocks = [...first.worded.blocks, ...then.worded.blocks];
      return { ...then, worded: { ...then.worded, blocks } };
    },
  };
}

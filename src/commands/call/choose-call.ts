import { carriedOver } from '../../conversation/hand-over/take-over.ts';
import { newWalk } from '../../conversation/new-walk.ts';
import type { WalkSummary } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import type { Shell } from '../../conversation/shell.ts';
import type { TerminalConversation } from '../../terminal/ports.ts';
import { findWalk } from '../find-walk.ts';
import type { CommandIo } from '../io.ts';
import { newWalkId, offerToGoOn } from '../offer-to-go-on.ts';
import { type ReaderOptions, readerOf } from '../reader-options.ts';
import { terminalConversation } from '../terminal-conversation.ts';

/** Options that decide which call is held, and for whom. */
export interface CallChoice extends Pick<ReaderOptions, 'units'> {
  readonly for?: string;
  readonly new?: boolean;
  readonly walk?: string;
}

type Reader = NonNullable<Parameters<typeof newWalk>[3]>;

/** A call that somebody else handed over, kept here before anything is said. */
async function keepTaken({ programme, store, clock }: Shell, id: WalkId, given: WalkRecord, reader: Reader) {
  const own = newWalk(programme, id, clock(), reader);
  const record = { ...carriedOver(programme, own, given), revision: 1 };
  await store.commit({ record, expected: 'new' });
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
export interface CallStart {
  readonly options: CallChoice;
  readonly minutes: number | undefined;
  /** Told the id of the call that was chosen. */
  readonly opened: { id?: WalkId };
  /** A call that somebody else handed over. */
  readonly taken: WalkRecord | undefined;
}

/** The call that was taken over or named, else a dropped one after a question, else a new one. */
export async function chooseCall(
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

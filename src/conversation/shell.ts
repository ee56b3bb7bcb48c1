import type { HandOvers } from './hand-over/hand-over.ts';
import { withLeft, withWarning } from './hand-over/leave.ts';
import type { CodeMet } from './hand-over/take-over.ts';
import type { Message, Reply } from './message.ts';
import { newWalk } from './new-walk.ts';
import type { Announcement, Clock, WalkStore } from './ports.ts';
import type { Programme } from './programme.ts';
import type { WalkId, WalkRecord } from './record.ts';
import { type Around, takeTurn } from './turn.ts';

/** What a turn needs from outside. */
export interface Shell {
  readonly programme: Programme;
  readonly store: WalkStore;
  readonly clock: Clock;
  /** Whether finished walks are to be announced to another system. */
  readonly announces?: boolean;
  /** Passes walks on; nothing: a call stays with whoever guides it. */
  readonly handOvers?: HandOvers;
}

/** How often a turn is run again when another came between loading and saving. */
const tries = 8;

/** A turn that was kept, with the record after it. */
export interface KeptTurn {
  readonly record: WalkRecord;
  readonly reply: Reply;
}

/** The walk changed under every one of the tries: nothing was kept, and the message may be sent again. */
export class WalkBusyError extends Error {
  override readonly name = 'WalkBusyError';
}

/** A message for a walk that is not there, where none was to begin. */
export class WalkUnknownError extends Error {
  override readonly name = 'WalkUnknownError';
}

/** How a message is to be handled. */
export interface Handling {
  /** The channel's own id of the message: it is answered once. */
  readonly seen?: { readonly channel: string; readonly id: string };
  /** Who reads, when the message begins a walk. */
  readonly reader?: Parameters<typeof newWalk>[3];
  /** Only a walk that is there goes on: none begins. */
  readonly onlyKnown?: boolean;
}

/** The announcement that a turn brings, when it finished the walk. */
function announcementOf(stored: WalkRecord | undefined, record: WalkRecord): Announcement | undefined {
  if (record.cursor.phase !== 'finished' || stored?.cursor.phase === 'finished') return undefined;
  const { id: walk, revision, updatedAt: at } = record;
  return { id: `${walk}.${revision}`, walk, revision, at };
}

/** The code in a message, or the one that waits for a yes, with what it leads to now. */
async function codeMet(
  { handOvers }: Shell,
  { id, cursor }: WalkRecord,
  message: Message,
): Promise<CodeMet | undefined> {
  if (!handOvers || message.kind !== 'text') return undefined;
  const typed = await handOvers.find(message.text, id);
  if (typed) return { ...typed, typed: true };
  if (cursor.pending?.kind !== 'takeOver') return undefined;
  const waiting = await handOvers.find(cursor.pending.code, id);
  return waiting && { ...waiting, typed: false };
}

async function aroundOf(shell: Shell, record: WalkRecord, message: Message): Promise<Around> {
  const met = await codeMet(shell, record, message);
  return {
    ...(shell.handOvers ? { handsOver: shell.handOvers.terms() } : {}),
    ...(met ? { met } : {}),
  };
}

/** What a kept turn does to what waits for somebody else, told with its reply. */
async function handedOver(
  { handOvers }: Shell,
  record: WalkRecord,
  reply: Reply,
  erase?: true,
): Promise<Reply> {
  const what = reply.handsOver;
  if (!what) return reply;
  const withdrawn = erase && handOvers ? await handOvers.withdraw(record.id) : false;
  if (erase) return withdrawn ? reply : withWarning(reply, 'hand-over.still-waits');
  if (record.revision !== reply.revision)
    // The message came before, and the walk went on since: nothing of later may get under its code.
    return what === 'renew' ? reply : withWarning(reply, 'hand-over.told-before');
  if (what === 'renew') {
    const renewed = handOvers ? await handOvers.renew(record) : false;
    return renewed ? reply : withWarning(reply, 'hand-over.not-renewed');
  }
  return handOvers ? withLeft(reply, await handOvers.leave(record, what), what) : reply;
}

/**
 * Runs one turn and keeps it before anything is shown. A message that was already answered gets the same reply again;
 * a turn that lost a race is run again on what is stored now.
 * Throws when the store fails, a WalkUnknownError with `onlyKnown`, and a WalkBusyError when the walk changed under every one of the tries.
 */
export async function handleMessage(
  shell: Shell,
  id: WalkId,
  message: Message,
  options: Handling = {},
): Promise<KeptTurn> {
  const { programme, store, clock } = shell;
  let answeredBefore = false;
  const repeated = async () => options.seen && store.replyTo(options.seen.channel, options.seen.id);
  for (let attempt = 0; attempt < tries; attempt++) {
    const stored = await store.load(id);
    const now = clock();
    const fresh = stored ?? newWalk(programme, id, now, options.reader);
    // Asked only after the store said so: most messages come once, and each reading costs a round trip.
    const unknown = options.onlyKnown && !stored;
    const before = answeredBefore || unknown ? await repeated() : undefined;
    if (before) return { record: fresh, reply: await handedOver(shell, fresh, before) };
    if (unknown) throw new WalkUnknownError('There is no such walk.');
    const around = await aroundOf(shell, fresh, message);
    const { record, reply, erase, takes } = takeTurn(programme, fresh, message, now, around);
    const announce = shell.announces ? announcementOf(stored, record) : undefined;
    const outcome = await store.commit({
      record,
      expected: stored?.revision ?? 'new',
      ...(options.seen ? { message: { ...options.seen, reply } } : {}),
      ...(erase ? { erase } : {}),
      ...(announce ? { announce } : {}),
      ...(takes === undefined ? {} : { takes: { code: takes, now: now.toISOString() } }),
    });
    if (outcome === 'saved') return { record, reply: await handedOver(shell, record, reply, erase) };
    answeredBefore = outcome === 'seen';
  }
  throw new WalkBusyError(`Walk ${id} changed ${tries} times while one message was answered: send it again.`);
}

import type { Message, Reply } from './message.ts';
import { newWalk } from './new-walk.ts';
import type { Clock, WalkStore } from './ports.ts';
import type { Programme } from './programme.ts';
import type { WalkId, WalkRecord } from './record.ts';
import { takeTurn } from './turn.ts';

/** What a turn needs from outside. */
export interface Shell {
  readonly programme: Programme;
  readonly store: WalkStore;
  readonly clock: Clock;
}

/** How often a turn is run again when another came between loading and saving. */
const tries = 8;

/** A turn that was kept, with the record after it. */
export interface KeptTurn {
  readonly record: WalkRecord;
  readonly reply: Reply;
}

/**
 * Runs one turn and keeps it before anything is shown. A message that was already answered gets the same reply again;
 * a turn that lost a race is run again on what is stored now.
 * Throws when the store fails, or when the walk changed under every one of the tries.
 */
export async function handleMessage(
  shell: Shell,
  id: WalkId,
  message: Message,
  options: { seen?: { channel: string; id: string }; reader?: Parameters<typeof newWalk>[3] } = {},
): Promise<KeptTurn> {
  const { programme, store, clock } = shell;
  for (let attempt = 0; attempt < tries; attempt++) {
    const stored = await store.load(id);
    const before = options.seen && (await store.replyTo(options.seen.channel, options.seen.id));
    if (before && stored) return { record: stored, reply: before };
    const now = clock();
    const { record, reply } = takeTurn(
      programme,
      stored ?? newWalk(programme, id, now, options.reader),
      message,
      now,
    );
    const kept = await store.commit({
      record,
      expected: stored?.revision ?? 'new',
      ...(options.seen ? { message: { ...options.seen, reply } } : {}),
    });
    if (kept === 'saved') return { record, reply };
  }
  throw new Error(`Walk ${id} changed ${tries} times while one message was answered: send it again.`);
}

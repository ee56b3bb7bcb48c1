import { createHash, createHmac, randomBytes } from 'node:crypto';
import type { WalkId } from '../conversation/record.ts';

/** The walk of a person on a channel: a keyed hash of their number or chat, which is itself kept nowhere. */
export function walkOfPerson(key: Uint8Array, channel: string, person: string): WalkId {
  const hash = createHmac('sha256', key)
    .update(JSON.stringify(['person', channel, person]))
    .digest('base64url');
  return `${channel}_${hash}` as WalkId;
}

/** The walk that a start request begins: the same for each repetition of it, unguessable to all others. */
export function walkOfStart(key: Uint8Array, messageId: string | undefined): WalkId {
  if (messageId === undefined) return `walk_${randomBytes(32).toString('base64url')}` as WalkId;
  const hash = createHmac('sha256', key)
    .update(JSON.stringify(['start', messageId]))
    .digest('base64url');
  return `walk_${hash}` as WalkId;
}

/** The name here of a walk that is kept elsewhere and waits here for somebody. */
export function leftId(key: Uint8Array, walk: string): WalkId {
  const hash = createHmac('sha256', key)
    .update(JSON.stringify(['left', walk]))
    .digest('base64url');
  return `left_${hash}` as WalkId;
}

/** What a store remembers of a message: one way, of one length, and of this walk only. */
export function seenId(walk: WalkId, messageId: string): string {
  return createHash('sha256')
    .update(JSON.stringify([walk, messageId]))
    .digest('base64url');
}

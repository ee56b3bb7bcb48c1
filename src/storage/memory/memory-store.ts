import type { Reply } from '../../conversation/message.ts';
import type { TurnToKeep, WalkStore } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { type LabelOf, newestFirst, summarise } from '../summary.ts';

interface KeptMessage {
  readonly walk: WalkId;
  readonly reply: Reply;
}

/** A store that forgets everything when the program ends: for tests, trials and headless runs. */
export function createMemoryStore(labelOf: LabelOf = () => undefined): WalkStore {
  const walks = new Map<WalkId, WalkRecord>();
  const messages = new Map<string, KeptMessage>();

  const commit = (turn: TurnToKeep): 'saved' | 'conflict' | 'seen' => {
    const { message, record } = turn;
    const key = message && messageKey(message.channel, message.id);
    if (key !== undefined && messages.has(key)) return 'seen';
    if ((walks.get(record.id)?.revision ?? 'new') !== turn.expected) return 'conflict';
    walks.set(record.id, record);
    if (message && key !== undefined) messages.set(key, { walk: record.id, reply: message.reply });
    return 'saved';
  };

  const remove = (id: WalkId): boolean => {
    for (const [key, kept] of messages) if (kept.walk === id) messages.delete(key);
    return walks.delete(id);
  };

  return {
    load: async (id) => walks.get(id),
    replyTo: async (channel, messageId) => messages.get(messageKey(channel, messageId))?.reply,
    commit: async (turn) => commit(turn),
    list: async () => [...walks.values()].map((record) => summarise(record, labelOf)).sort(newestFirst),
    remove: async (id) => remove(id),
    close: async () => undefined,
  };
}

/** The pair as JSON, so that no channel and id can be mistaken for another pair. */
function messageKey(channel: string, messageId: string): string {
  return JSON.stringify([channel, messageId]);
}

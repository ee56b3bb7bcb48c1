import type { Reply } from '../../conversation/message.ts';
import type { ServerStore, TurnToKeep } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { type LabelOf, newestFirst, summarise } from '../summary.ts';
import { createMemoryDeliveries } from './memory-deliveries.ts';
import { createMemoryHandOvers } from './memory-hand-overs.ts';

interface KeptMessage {
  /** Nothing when the walk was erased. */
  readonly walk?: WalkId;
  readonly at: string;
  readonly reply: Reply;
}

/** A store that forgets everything when the program ends: for tests, trials and headless runs. */
export function createMemoryStore(labelOf: LabelOf = () => undefined): ServerStore {
  const walks = new Map<WalkId, WalkRecord>();
  const messages = new Map<string, KeptMessage>();
  const { add, removeOf, removeSentBefore, ...deliveries } = createMemoryDeliveries();
  const {
    isWaiting,
    takeForGood,
    removeOf: removeWaiting,
    removeBefore,
    ...handOvers
  } = createMemoryHandOvers();

  const commit = (turn: TurnToKeep): 'saved' | 'conflict' | 'seen' => {
    const { message, record, erase, takes } = turn;
    const key = message && messageKey(message.channel, message.id);
    if (key !== undefined && messages.has(key)) return 'seen';
    if ((walks.get(record.id)?.revision ?? 'new') !== turn.expected) return 'conflict';
    if (takes && !isWaiting(takes.code, takes.now)) return 'conflict';
    if (takes) takeForGood(takes.code);
    if (erase) remove(record.id);
    else walks.set(record.id, record);
    const kept = { at: record.updatedAt, ...(erase ? {} : { walk: record.id }) };
    if (message && key !== undefined) messages.set(key, { ...kept, reply: message.reply });
    if (turn.announce) add(turn.announce);
    return 'saved';
  };

  const remove = (id: WalkId): boolean => {
    for (const [key, kept] of messages) if (kept.walk === id) messages.delete(key);
    removeOf(id);
    removeWaiting(id);
    return walks.delete(id);
  };

  const sweep: ServerStore['sweep'] = async ({ walksBefore, messagesBefore, handOversBefore }) => {
    if (handOversBefore !== undefined) removeBefore(handOversBefore);
    if (messagesBefore !== undefined) {
      for (const [key, kept] of messages) if (kept.at < messagesBefore) messages.delete(key);
      removeSentBefore(messagesBefore);
    }
    const old = [...walks.values()].filter((one) => walksBefore !== undefined && one.updatedAt < walksBefore);
    return old.filter(({ id }) => remove(id)).length;
  };

  return {
    load: async (id) => walks.get(id),
    replyTo: async (channel, messageId) => messages.get(messageKey(channel, messageId))?.reply,
    commit: async (turn) => commit(turn),
    list: async () => [...walks.values()].map((record) => summarise(record, labelOf)).sort(newestFirst),
    remove: async (id) => remove(id),
    deliveries,
    handOvers,
    sweep,
    ping: async () => undefined,
    close: async () => undefined,
  };
}

/** The pair as JSON, so that no channel and id can be mistaken for another pair. */
function messageKey(channel: string, messageId: string): string {
  return JSON.stringify([channel, messageId]);
}

import type { Announcement, Delivery, DeliveryStore } from '../../conversation/ports.ts';
import type { WalkId } from '../../conversation/record.ts';

/** An outbox in memory, with the writes that belong to a turn. */
export interface MemoryDeliveries extends DeliveryStore {
  readonly add: (announcement: Announcement) => void;
  readonly removeOf: (walk: WalkId) => void;
  readonly removeSentBefore: (at: string) => void;
}

/** Oldest due first, or newest first; those of one moment by id. */
const by = (pick: (one: Delivery) => string, direction: 1 | -1) => (a: Delivery, b: Delivery) => {
  if (pick(a) !== pick(b)) return pick(a) < pick(b) ? -direction : direction;
  return a.id < b.id ? -1 : 1;
};

/** An outbox that forgets everything when the program ends. */
export function createMemoryDeliveries(): MemoryDeliveries {
  const rows = new Map<string, Delivery>();
  const listed = (state: Delivery['state']) => [...rows.values()].filter((one) => one.state === state);
  const change = (id: string, when: (one: Delivery) => boolean, to: (one: Delivery) => Delivery): boolean => {
    const row = rows.get(id);
    if (!row || !when(row)) return false;
    rows.set(id, to(row));
    return true;
  };
  const forget = (which: (one: Delivery) => boolean) => {
    for (const [id, row] of rows) if (which(row)) rows.delete(id);
  };
  return {
    add: (announcement) => {
      if (!rows.has(announcement.id))
        rows.set(announcement.id, { ...announcement, state: 'waiting', attempts: 0, dueAt: announcement.at });
    },
    due: async (now, limit) =>
      listed('waiting')
        .filter((one) => one.dueAt <= now)
        .sort(by((one) => one.dueAt, 1))
        .slice(0, limit),
    claim: async ({ id, dueAt }, until) =>
      change(
        id,
        (one) => one.state === 'waiting' && one.dueAt === dueAt,
        (one) => ({ ...one, dueAt: until }),
      ),
    settle: async (id, outcome) =>
      void change(
        id,
        () => true,
        ({ problem: _, ...one }) => ({ ...one, attempts: one.attempts + 1, ...outcome }),
      ),
    list: async (state, limit) =>
      listed(state)
        .sort(by((one) => one.at, -1))
        .slice(0, limit),
    resend: async (id, now) =>
      change(
        id,
        (one) => one.state === 'dead',
        ({ problem: _, ...one }) => ({ ...one, state: 'waiting', attempts: 0, dueAt: now }),
      ),
    removeOf: (walk) => forget((one) => one.walk === walk),
    removeSentBefore: (at) => forget((one) => one.state === 'sent' && one.at < at),
  };
}

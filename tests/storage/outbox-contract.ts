import { expect, it } from 'vitest';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { walk } from './walks.ts';

const at = (minute: string) => `2026-05-01T09:${minute}:00.000Z`;

async function announce(store: ServerStore, id: string, minute: string): Promise<void> {
  const announcement = { id: `${id}.0`, walk: id as WalkId, revision: 0, at: at(minute) };
  await store.commit({ record: walk(id), expected: 'new', announce: announcement });
}

/** What a store does with announcements on their way. */
export function describeOutbox(store: () => ServerStore): void {
  it('keeps an announcement with its turn, due at once', async () => {
    await announce(store(), 'a', '00');
    expect(await store().deliveries.due(at('00'), 9)).toEqual([
      { id: 'a.0', walk: 'a', revision: 0, at: at('00'), state: 'waiting', attempts: 0, dueAt: at('00') },
    ]);
    expect(await store().deliveries.due('2026-05-01T08:59:59.999Z', 9)).toEqual([]);
  });

  it('keeps no announcement of a turn that met a conflict', async () => {
    await store().commit({ record: walk('a', { revision: 3 }), expected: 'new' });
    await announce(store(), 'a', '00');
    expect(await store().deliveries.list('waiting', 9)).toEqual([]);
  });

  it('gives the longest due first, and no more than asked for', async () => {
    await announce(store(), 'late', '05');
    await announce(store(), 'early', '01');
    const due = await store().deliveries.due(at('09'), 1);
    expect(due.map((one) => one.id)).toEqual(['early.0']);
  });

  it('lets one of two processes have a delivery', async () => {
    await announce(store(), 'a', '00');
    const [one] = await store().deliveries.due(at('01'), 9);
    if (!one) throw new Error('nothing is due');
    const claims = await Promise.all([
      store().deliveries.claim(one, at('02')),
      store().deliveries.claim(one, at('02')),
    ]);
    expect([...claims].sort()).toEqual([false, true]);
    expect(await store().deliveries.due(at('01'), 9)).toEqual([]);
    expect(await store().deliveries.due(at('02'), 9)).toHaveLength(1);
  });

  it('counts attempts, tells why they failed, and lists what was sent or is dead', async () => {
    const { deliveries } = store();
    await announce(store(), 'a', '00');
    await announce(store(), 'b', '00');
    await deliveries.settle('a.0', { state: 'waiting', dueAt: at('07'), problem: 'answered 500' });
    expect(await deliveries.due(at('07'), 9)).toMatchObject([
      { id: 'b.0' },
      { id: 'a.0', attempts: 1, problem: 'answered 500' },
    ]);
    await deliveries.settle('a.0', { state: 'sent' });
    await deliveries.settle('b.0', { state: 'dead', problem: 'answered 410' });
    expect(await deliveries.due(at('59'), 9)).toEqual([]);
    expect(await deliveries.list('sent', 9)).toMatchObject([{ id: 'a.0', attempts: 2 }]);
    expect((await deliveries.list('sent', 9))[0]).not.toHaveProperty('problem');
    expect(await deliveries.list('dead', 9)).toMatchObject([{ id: 'b.0', problem: 'answered 410' }]);
  });

  it('sends a dead one again, and only a dead one', async () => {
    const { deliveries } = store();
    await announce(store(), 'a', '00');
    expect(await deliveries.resend('a.0', at('30'))).toBe(false);
    await deliveries.settle('a.0', { state: 'dead', problem: 'answered 410' });
    expect(await deliveries.resend('a.0', at('30'))).toBe(true);
    expect(await deliveries.due(at('30'), 9)).toMatchObject([{ id: 'a.0', attempts: 0, dueAt: at('30') }]);
    expect(await deliveries.resend('nobody.0', at('30'))).toBe(false);
  });
}

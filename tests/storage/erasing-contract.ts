import { expect, it } from 'vitest';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { reply, walk } from './walks.ts';

const at = (day: string) => `2026-05-${day}T09:00:00.000Z`;

/** What a store does with walks that are to go. */
export function describeErasing(store: () => ServerStore): void {
  it('erases a walk with its replies and announcements in one turn, and keeps only the last reply', async () => {
    const announce = { id: 'w.1', walk: 'w' as WalkId, revision: 1, at: at('01') };
    const first = { channel: 'sms', id: 'm1', reply: reply(1) };
    await store().commit({ record: walk('w', { revision: 1 }), expected: 'new', message: first, announce });
    const last = { channel: 'sms', id: 'm2', reply: reply(2) };
    const turn = { record: walk('w', { revision: 2 }), expected: 1, message: last, erase: true } as const;
    expect(await store().commit(turn)).toBe('saved');
    expect(await store().load('w' as WalkId)).toBeUndefined();
    expect(await store().replyTo('sms', 'm1')).toBeUndefined();
    expect(await store().replyTo('sms', 'm2')).toEqual(reply(2));
    expect(await store().deliveries.list('waiting', 9)).toEqual([]);
    expect(await store().commit({ ...turn, expected: 'new' })).toBe('seen');
  });

  it('erases nothing when another turn came between', async () => {
    await store().commit({ record: walk('w', { revision: 5 }), expected: 'new' });
    const turn = { record: walk('w', { revision: 5 }), expected: 4, erase: true } as const;
    expect(await store().commit(turn)).toBe('conflict');
    expect(await store().load('w' as WalkId)).toBeDefined();
  });

  it('sweeps away walks that nobody changed for long, with what belongs to them, and old replies', async () => {
    const message = (id: string) => ({ channel: 'sms', id, reply: reply(1) });
    const old = {
      record: walk('old', { updatedAt: at('01') }),
      expected: 'new',
      message: message('m1'),
    } as const;
    const announce = { id: 'old.0', walk: 'old' as WalkId, revision: 0, at: at('01') };
    await store().commit({ ...old, announce });
    await store().commit({
      record: walk('new', { updatedAt: at('09') }),
      expected: 'new',
      message: message('m2'),
    });
    expect(await store().sweep({ walksBefore: at('05') })).toBe(1);
    expect(await store().load('old' as WalkId)).toBeUndefined();
    expect(await store().replyTo('sms', 'm1')).toBeUndefined();
    expect(await store().deliveries.list('waiting', 9)).toEqual([]);
    expect(await store().replyTo('sms', 'm2')).toBeDefined();
    expect(await store().sweep({ messagesBefore: at('10') })).toBe(0);
    expect(await store().replyTo('sms', 'm2')).toBeUndefined();
    expect(await store().load('new' as WalkId)).toBeDefined();
    expect(await store().sweep({})).toBe(0);
  });

  it('can say that it is usable', async () => {
    await expect(store().ping()).resolves.toBeUndefined();
  });
}

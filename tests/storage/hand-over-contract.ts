import { expect, it } from 'vitest';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { WalkId } from '../../src/conversation/record.ts';
import { reply, walk } from './walks.ts';

const at = (minute: string) => `2026-05-01T09:${minute}:00.000Z`;
const waiting = (code: string, changes: { walk?: string; sealed?: string } = {}) => ({
  code,
  walk: (changes.walk ?? 'w') as WalkId,
  until: at('30'),
  sealed: changes.sealed ?? 'sealed text',
});

/** What a store does with walks that wait for whoever has their code. */
export function describeHandOvers(store: () => ServerStore): void {
  const handOvers = () => store().handOvers;

  it('gives what waits under a code until its time is over', async () => {
    expect(await handOvers().leave(waiting('c'))).toBe('left');
    expect(await handOvers().waiting('c', at('29'))).toBe('sealed text');
    expect(await handOvers().waiting('c', at('30'))).toBeUndefined();
    expect(await handOvers().waiting('other', at('00'))).toBeUndefined();
  });

  it('puts what is left later in its place, and refuses the code of another walk', async () => {
    await handOvers().leave(waiting('c'));
    expect(await handOvers().leave({ ...waiting('c', { sealed: 'later text' }), until: at('40') })).toBe(
      'left',
    );
    expect(await handOvers().leave(waiting('c', { walk: 'another' }))).toBe('other');
    expect(await handOvers().waiting('c', at('35'))).toBe('later text');
  });

  it('brings what waits up to date, not its time, and nothing that was taken', async () => {
    await handOvers().leave(waiting('c'));
    await handOvers().leave(waiting('d'));
    await handOvers().leave(waiting('e', { walk: 'another' }));
    await handOvers().take('d', { by: 'one', now: at('00'), again: at('10') });
    expect(await handOvers().untaken('w' as WalkId)).toEqual(['c']);
    await handOvers().renew('c', 'later text');
    await handOvers().renew('d', 'later text');
    expect(await handOvers().waiting('c', at('29'))).toBe('later text');
    expect(await handOvers().waiting('c', at('30'))).toBeUndefined();
    expect(await handOvers().take('d', { by: 'one', now: at('00'), again: at('10') })).toBe('sealed text');
  });

  it('is taken back with all that comes from one walk', async () => {
    await handOvers().leave(waiting('c'));
    await handOvers().leave(waiting('e', { walk: 'another' }));
    await handOvers().withdraw('w' as WalkId);
    expect(await handOvers().waiting('c', at('00'))).toBeUndefined();
    expect(await handOvers().waiting('e', at('00'))).toBe('sealed text');
  });

  it('lets one taker have it, who may take it again for a while in case it got lost', async () => {
    await handOvers().leave(waiting('c'));
    const first = { by: 'one', now: at('00'), again: at('10') };
    expect(await handOvers().take('c', first)).toBe('sealed text');
    expect(await handOvers().take('c', { ...first, by: 'two' })).toBeUndefined();
    expect(await handOvers().waiting('c', at('01'))).toBeUndefined();
    expect(await handOvers().take('c', { by: 'one', now: at('09'), again: at('19') })).toBe('sealed text');
    expect(await handOvers().take('c', { by: 'one', now: at('10'), again: at('20') })).toBeUndefined();
  });

  it('does not let a taker have it after its time', async () => {
    await handOvers().leave(waiting('c'));
    expect(await handOvers().take('c', { by: 'one', now: at('30'), again: at('40') })).toBeUndefined();
  });

  it('is taken by one of many who come at the same moment', async () => {
    await handOvers().leave(waiting('c'));
    const takers = Array.from({ length: 8 }, (_, number) =>
      handOvers().take('c', { by: `taker ${number}`, now: at('00'), again: at('10') }),
    );
    expect((await Promise.all(takers)).filter((one) => one !== undefined)).toHaveLength(1);
  });

  it('goes into a walk with the turn that takes it, once, and leaves nothing behind', async () => {
    await handOvers().leave(waiting('c'));
    const takes = { code: 'c', now: at('00') };
    const message = { channel: 'sms', id: 'm1', reply: reply(1) };
    expect(await store().commit({ record: walk('a'), expected: 'new', message, takes })).toBe('saved');
    expect(await store().commit({ record: walk('b'), expected: 'new', takes })).toBe('conflict');
    expect(await store().load('b' as WalkId)).toBeUndefined();
    expect(await handOvers().waiting('c', at('00'))).toBeUndefined();
    // The same code is not given out a second time.
    expect(await handOvers().leave(waiting('c'))).toBe('taken');
    expect(await handOvers().waiting('c', at('00'))).toBeUndefined();
  });

  it('still waits after a turn that was not kept', async () => {
    await handOvers().leave(waiting('c'));
    await store().commit({ record: walk('a', { revision: 3 }), expected: 'new' });
    const turn = { record: walk('a'), expected: 1, takes: { code: 'c', now: at('00') } } as const;
    expect(await store().commit(turn)).toBe('conflict');
    expect(await handOvers().waiting('c', at('00'))).toBe('sealed text');
  });

  it('goes with the walk from which it comes, and when its time is over', async () => {
    await store().commit({ record: walk('w'), expected: 'new' });
    await handOvers().leave(waiting('c'));
    await store().remove('w' as WalkId);
    expect(await handOvers().waiting('c', at('00'))).toBeUndefined();

    await handOvers().leave(waiting('d', { walk: 'elsewhere' }));
    await store().sweep({ handOversBefore: at('30') });
    expect(await handOvers().waiting('d', at('00'))).toBe('sealed text');
    await store().sweep({ handOversBefore: at('31') });
    expect(await handOvers().waiting('d', at('00'))).toBeUndefined();
  });
}

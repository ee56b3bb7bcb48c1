import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ServerStore } from '../../src/conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import type { LabelOf } from '../../src/storage/summary.ts';
import { describeErasing } from './erasing-contract.ts';
import { describeHandOvers } from './hand-over-contract.ts';
import { describeOutbox } from './outbox-contract.ts';
import { reply, walk } from './walks.ts';

export interface StoreUnderTest {
  readonly store: ServerStore;
  readonly cleanUp: () => Promise<void>;
}

const labelOf: LabelOf = (record) => {
  const label = record.sheet['about.label'];
  return label?.status === 'given' && typeof label.value === 'string' ? label.value : undefined;
};

/** What every store keeps to; each kind of store runs the same tests. */
export function describeStore(name: string, open: (labelOf: LabelOf) => Promise<StoreUnderTest>): void {
  describe(`the ${name} store`, () => {
    let under: StoreUnderTest;
    let store: ServerStore;
    beforeEach(async () => {
      under = await open(labelOf);
      store = under.store;
    });
    afterEach(async () => {
      await store.close();
      await under.cleanUp();
    });

    describeKeeping(() => store);
    describeTurns(() => store);
    describeList(() => store);
    describeErasing(() => store);
    describeOutbox(() => store);
    describeHandOvers(() => store);
  });
}

function describeKeeping(store: () => ServerStore): void {
  const full: WalkRecord = walk('full', {
    units: 'metric',
    sheet: {
      'roof.covering': { status: 'given', value: 'tile', said: 'brown tile 🏠', how: 'seen' },
      'roof.age': { status: 'notSure' },
      'eaves.gap': {
        status: 'bySide',
        sides: { front: { status: 'given', value: 0.003 }, left: { status: 'skipped' } },
      },
      'trees/t2/trees.sides': { status: 'given', value: ['left', 'back'] },
    },
    cursor: { phase: 'emergency', key: 'vents.kind', pending: { kind: 'emergency', matched: 'smoke' } },
    notes: [{ key: 'roof.covering', text: 'it\'s "old"; \n--' }, { text: 'ring again' }],
  });

  it('gives back a walk exactly as it was committed', async () => {
    expect(await store().commit({ record: full, expected: 'new' })).toBe('saved');
    expect(await store().load(full.id)).toEqual(full);
  });

  it('answers undefined for a walk and a message that are not there', async () => {
    expect(await store().load('nobody' as WalkId)).toBeUndefined();
    expect(await store().replyTo('sms', 'm1')).toBeUndefined();
  });

  it('removes a walk with the replies that were kept for it, and only that one', async () => {
    const message = { channel: 'sms', id: 'm1', reply: reply(1) };
    await store().commit({ record: walk('gone'), expected: 'new', message });
    await store().commit({ record: walk('stays'), expected: 'new', message: { ...message, id: 'm2' } });
    expect(await store().remove('gone' as WalkId)).toBe(true);
    expect(await store().remove('gone' as WalkId)).toBe(false);
    expect(await store().load('gone' as WalkId)).toBeUndefined();
    expect(await store().replyTo('sms', 'm1')).toBeUndefined();
    expect(await store().load('stays' as WalkId)).toBeDefined();
    expect(await store().replyTo('sms', 'm2')).toBeDefined();
  });
}

function describeTurns(store: () => ServerStore): void {
  it('saves only over the revision that was loaded', async () => {
    await store().commit({ record: walk('w', { revision: 1 }), expected: 'new' });
    expect(await store().commit({ record: walk('w', { revision: 2 }), expected: 1 })).toBe('saved');
    expect(await store().commit({ record: walk('w', { revision: 2, flow: 'late' }), expected: 1 })).toBe(
      'conflict',
    );
    expect((await store().load('w' as WalkId))?.flow).toBe('f1');
  });

  it('reports a conflict for a new walk that is there already and for an old one that is gone', async () => {
    await store().commit({ record: walk('w'), expected: 'new' });
    expect(await store().commit({ record: walk('w', { flow: 'other' }), expected: 'new' })).toBe('conflict');
    expect(await store().commit({ record: walk('gone', { revision: 4 }), expected: 3 })).toBe('conflict');
  });

  it('keeps no reply for a turn that met a conflict', async () => {
    await store().commit({ record: walk('w', { revision: 5 }), expected: 'new' });
    const message = { channel: 'sms', id: 'm1', reply: reply(1) };
    expect(await store().commit({ record: walk('w', { revision: 2 }), expected: 1, message })).toBe(
      'conflict',
    );
    expect(await store().replyTo('sms', 'm1')).toBeUndefined();
  });

  it('answers a repeated message with the stored reply and changes nothing', async () => {
    const first = { channel: 'sms', id: 'm1', reply: reply(1) };
    await store().commit({ record: walk('w', { revision: 1 }), expected: 'new', message: first });
    const again = { ...first, reply: reply(2) };
    expect(await store().commit({ record: walk('w', { revision: 2 }), expected: 1, message: again })).toBe(
      'seen',
    );
    expect(await store().replyTo('sms', 'm1')).toEqual(reply(1));
    expect((await store().load('w' as WalkId))?.revision).toBe(1);
    expect(await store().replyTo('chat', 'm1')).toBeUndefined();
  });

  it('answers once when the same message arrives twice at the same moment', async () => {
    const turn = {
      record: walk('w'),
      expected: 'new',
      message: { channel: 'sms', id: 'm', reply: reply(1) },
    } as const;
    const outcomes = await Promise.all([store().commit(turn), store().commit(turn), store().commit(turn)]);
    expect(outcomes).toEqual(['saved', 'seen', 'seen']);
  });

  it('loses none of 50 answers committed at once to one walk', async () => {
    await store().commit({ record: walk('busy'), expected: 'new' });
    const numbers = Array.from({ length: 50 }, (_, index) => index);
    await Promise.all(numbers.map((number) => answerWithRetry(store(), number)));
    const kept = await store().load('busy' as WalkId);
    expect(Object.keys(kept?.sheet ?? {}).sort()).toEqual(numbers.map((number) => `q${number}`).sort());
    expect(kept?.revision).toBe(50);
  });

  it('keeps 50 walks begun at once apart', async () => {
    const ids = Array.from({ length: 50 }, (_, index) => `w${index}`);
    const outcomes = await Promise.all(
      ids.map((id) => store().commit({ record: walk(id), expected: 'new' })),
    );
    expect(new Set(outcomes)).toEqual(new Set(['saved']));
    expect((await store().list()).length).toBe(50);
  });
}

async function answerWithRetry(store: ServerStore, number: number): Promise<void> {
  for (let attempt = 0; attempt < 60; attempt += 1) {
    const loaded = await store.load('busy' as WalkId);
    if (!loaded) throw new Error('the walk is gone');
    const sheet = { ...loaded.sheet, [`q${number}`]: { status: 'given', value: number } as const };
    const record = { ...loaded, sheet, revision: loaded.revision + 1 };
    const outcome = await store.commit({ record, expected: loaded.revision });
    if (outcome === 'saved') return;
  }
  throw new Error(`answer ${number} met a conflict every time`);
}

function describeList(store: () => ServerStore): void {
  it('lists the newest walk first, with its label and how many answers it has', async () => {
    const at = (hour: string) => ({ updatedAt: `2026-05-01T${hour}:00:00.000Z` });
    await store().commit({ record: walk('old', at('08')), expected: 'new' });
    await store().commit({
      record: walk('new', {
        ...at('11'),
        cursor: { phase: 'finished' },
        sheet: {
          'about.label': { status: 'given', value: '3 Kiln Road' },
          'roof.age': { status: 'notSure' },
          'roof.slope': { status: 'skipped' },
        },
      }),
      expected: 'new',
    });
    await store().commit({ record: walk('b', at('09')), expected: 'new' });
    await store().commit({ record: walk('a', at('09')), expected: 'new' });
    const list = await store().list();
    expect(list.map((line) => line.id)).toEqual(['new', 'a', 'b', 'old']);
    expect(list[0]).toEqual({
      id: 'new',
      startedAt: '2026-05-01T09:00:00.000Z',
      updatedAt: '2026-05-01T11:00:00.000Z',
      phase: 'finished',
      answered: 2,
      label: '3 Kiln Road',
    });
    expect(list[3]).not.toHaveProperty('label');
  });
}

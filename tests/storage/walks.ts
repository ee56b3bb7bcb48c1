import type { Reply } from '../../src/conversation/message.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';

/** A walk of 12 Fernhollow Lane with nothing answered, to be changed by the tests. */
export function walk(id: string, changes: Partial<WalkRecord> = {}): WalkRecord {
  return {
    id: id as WalkId,
    flow: 'f1',
    audience: 'resident',
    language: 'en',
    sheet: {},
    cursor: { phase: 'asking', key: 'roof.covering' },
    revision: 0,
    startedAt: '2026-05-01T09:00:00.000Z',
    updatedAt: '2026-05-01T09:00:00.000Z',
    notes: [],
    ...changes,
  };
}

/** A reply that carries its number, so that tests can tell one from another. */
export function reply(number: number): Reply {
  return {
    parts: [{ kind: 'say', tone: 'plain', text: 'walk.noted', values: { number } }],
    phase: 'asking',
    progress: {
      stop: 'roof',
      stops: [{ id: 'roof', title: 'stop/roof/title', state: 'here' }],
      answered: number,
      asked: 12,
    },
    revision: number,
  };
}

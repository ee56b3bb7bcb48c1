import { createHmac } from 'node:crypto';
import type { FoundCode, HandOvers, LeftWalk } from '../../conversation/hand-over/hand-over.ts';
import type { Clock, HandOverStore } from '../../conversation/ports.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { createRateLimit } from '../rate-limit.ts';
import { codeFrom, readCode, sayCode } from './code.ts';
import { codeKey, seal, unseal } from './seal.ts';

/** How often one person may try a code in a minute: enough for slips, far too few for guessing among 10^11. */
const triesPerMinute = 5;

/** A code that another walk has is made anew; two such in a row would be a wonder. */
const attempts = 4;

/** How long whoever took a walk may take it again, in case it got lost on the way. */
const againMinutes = 10;

/** What passing walks on needs from outside. */
export interface HandOverParts {
  readonly store: HandOverStore;
  readonly key: Uint8Array;
  readonly clock: Clock;
  readonly hours: number;
  readonly reach: string | undefined;
  readonly keptDays: number;
  readonly address: string | undefined;
  /** A walk from its JSON text; nothing when it is none. */
  readonly readWalk: (json: string) => WalkRecord | undefined;
}

/** Passes walks on over a store, and gives them to programs of volunteers. */
export interface DeskHandOvers extends HandOvers {
  /** The walk under a code, once; again for some minutes for the same taker. */
  readonly take: (code: string, by: string) => Promise<WalkRecord | undefined>;
}

const minutesAfter = (now: Date, minutes: number) => new Date(now.getTime() + minutes * 60_000).toISOString();

/** What only this turn of this channel knows does not go along. */
function toPassOn(record: WalkRecord): WalkRecord {
  if (!record.call) return record;
  const { handsOver: _, handed: __, ...call } = record.call;
  return { ...record, call };
}

/** Passes walks on over a store that never sees a code nor what waits under it. */
export function createHandOvers(parts: HandOverParts): DeskHandOvers {
  const { store, key, clock, hours, reach, keptDays, address, readWalk } = parts;
  const limit = createRateLimit(triesPerMinute, clock);
  const known = reach === undefined ? {} : { reach };
  const read = (code: string, sealed: string | undefined): WalkRecord | undefined => {
    const text = sealed === undefined ? undefined : unseal(key, code, sealed);
    return text === undefined ? undefined : readWalk(text);
  };

  const leave = async (record: WalkRecord, revision: number): Promise<LeftWalk> => {
    const text = JSON.stringify(toPassOn(record));
    const until = minutesAfter(clock(), hours * 60);
    for (let attempt = 0; attempt < attempts; attempt++) {
      const what = JSON.stringify(['hand-over code', record.id, revision, attempt]);
      const code = codeFrom(createHmac('sha256', key).update(what).digest());
      const waiting = { code: codeKey(key, code), walk: record.id, until, sealed: seal(key, code, text) };
      const told = { ...known, ...(address === undefined ? {} : { address }) };
      if (await store.leave(waiting)) return { kind: 'left', code: sayCode(code), hours, ...told };
    }
    return { kind: 'failed', why: 'No code is free. Try again in a minute.' };
  };

  const find = async (text: string, asker: string): Promise<FoundCode | undefined> => {
    const code = readCode(text);
    if (code === undefined) return undefined;
    if (limit(asker) !== 'within') return { kind: 'later' };
    if (code === 'slip') return { kind: 'none' };
    const where = codeKey(key, code);
    const walk = read(code, await store.waiting(where, clock().toISOString()));
    return walk ? { kind: 'walk', key: where, code, walk } : { kind: 'none' };
  };

  const take = async (text: string, by: string): Promise<WalkRecord | undefined> => {
    const code = readCode(text);
    if (code === undefined || code === 'slip') return undefined;
    const now = clock();
    const taker = { by, now: now.toISOString(), again: minutesAfter(now, againMinutes) };
    return read(code, await store.take(codeKey(key, code), taker));
  };

  return { terms: () => ({ hours, keptDays, ...known }), leave, find, take };
}

import { createHmac } from 'node:crypto';
import type { FoundCode, HandOvers, LeftWalk } from '../../conversation/hand-over/hand-over.ts';
import { type Parcel, parcelOf, parcelsLeft } from '../../conversation/hand-over/parcel.ts';
import type { Clock, HandOverStore } from '../../conversation/ports.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { createRateLimit } from '../rate-limit.ts';
import { codeFrom, readCode, sayCode } from './code.ts';
import { codeKey, seal, unseal } from './seal.ts';

/** How often one person may try a code in a minute: enough for slips, far too few for guessing among 10^11. */
const triesPerMinute = 5;

/** Codes of one call, one after the other, each made when the one before was taken. */
const codesEach = 20;

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
  readonly leaveParcel: (parcel: Parcel) => Promise<LeftWalk>;
  readonly renewParcel: (parcel: Parcel) => Promise<void>;
  /** The walk under a code, once; again for some minutes for the same taker. */
  readonly take: (code: string, by: string) => Promise<WalkRecord | undefined>;
}

const minutesAfter = (now: Date, minutes: number) => new Date(now.getTime() + minutes * 60_000).toISOString();

/** The codes that a parcel may have, in turn. */
function codesOf(key: Uint8Array, { walk, to, since }: Parcel): string[] {
  return Array.from({ length: codesEach }, (_, number) => {
    const what = JSON.stringify(['hand-over code', walk.id, to, since, number]);
    return codeFrom(createHmac('sha256', key).update(what).digest());
  });
}

/** Leaving, bringing up to date and taking back. */
function leaving({ store, key, clock, hours, reach, address }: HandOverParts) {
  const told = {
    hours,
    ...(reach === undefined ? {} : { reach }),
    ...(address === undefined ? {} : { address }),
  };
  return {
    leaveParcel: async (parcel: Parcel): Promise<LeftWalk> => {
      const text = JSON.stringify(parcel.walk);
      const until = minutesAfter(clock(), hours * 60);
      for (const code of codesOf(key, parcel)) {
        const waiting = {
          code: codeKey(key, code),
          walk: parcel.walk.id,
          until,
          sealed: seal(key, code, text),
        };
        if ((await store.leave(waiting)) === 'left') return { kind: 'left', code: sayCode(code), ...told };
      }
      return { kind: 'failed', why: 'This call was handed over too often. Try again tomorrow.' };
    },
    renewParcel: async (parcel: Parcel): Promise<void> => {
      const waits = new Set(await store.untaken(parcel.walk.id));
      const code = codesOf(key, parcel).find((one) => waits.has(codeKey(key, one)));
      if (code !== undefined)
        await store.renew(codeKey(key, code), seal(key, code, JSON.stringify(parcel.walk)));
    },
    withdraw: async (walk: WalkId): Promise<boolean> => {
      await store.withdraw(walk);
      return true;
    },
  };
}

/** Passes walks on over a store that never sees a code nor what waits under it. */
export function createHandOvers(parts: HandOverParts): DeskHandOvers {
  const { store, key, clock, hours, reach, keptDays, readWalk } = parts;
  const limit = createRateLimit(triesPerMinute, clock);
  const left = leaving(parts);
  const read = (code: string, sealed: string | undefined): WalkRecord | undefined => {
    const text = sealed === undefined ? undefined : unseal(key, code, sealed);
    return text === undefined ? undefined : readWalk(text);
  };

  const find = async (text: string, asker: WalkId): Promise<FoundCode | undefined> => {
    const code = readCode(text);
    if (code === undefined) return undefined;
    if (limit(asker) !== 'within') return { kind: 'later' };
    if (code.kind === 'slip') return { kind: 'none' };
    const where = codeKey(key, code.digits);
    const walk = read(code.digits, await store.waiting(where, clock().toISOString()));
    if (walk?.id === asker) return { kind: 'own' };
    if (walk) return { kind: 'walk', key: where, code: code.digits, walk };
    // Twelve digits among other words may be anything.
    return code.alone ? { kind: 'none' } : undefined;
  };

  const take = async (text: string, by: string): Promise<WalkRecord | undefined> => {
    const code = readCode(text);
    if (code?.kind !== 'code') return undefined;
    const now = clock();
    const taker = { by, now: now.toISOString(), again: minutesAfter(now, againMinutes) };
    return read(code.digits, await store.take(codeKey(key, code.digits), taker));
  };

  return {
    ...left,
    terms: () => ({ hours, keptDays, ...(reach === undefined ? {} : { reach }) }),
    leave: (record, to) => left.leaveParcel(parcelOf(record, to)),
    renew: async (record) => {
      for (const parcel of parcelsLeft(record)) await left.renewParcel(parcel);
      return true;
    },
    find,
    take,
  };
}

import type { WalkRecord } from '../record.ts';
import { type HandOverTo, handOverTos } from './terms.ts';

/** A walk to be left, with what its code is made from. */
export interface Parcel {
  readonly walk: WalkRecord;
  readonly to: HandOverTo;
  /** Tells calls on one walk apart: when it was first left. */
  readonly since: string;
}

/** A walk as it is left for somebody. */
export function parcelOf(record: WalkRecord, to: HandOverTo): Parcel {
  return { walk: parcelFor(to, record), to, since: record.call?.left?.[to] ?? record.startedAt };
}

/** A walk as it is left for each for whom there is a code. */
export function parcelsLeft(record: WalkRecord): Parcel[] {
  return handOverTos.filter((to) => record.call?.left?.[to] !== undefined).map((to) => parcelOf(record, to));
}

/**
 * What is left for somebody else: for the caller the answers alone, for a colleague the call with its notes and the
 * number to call back. What only this turn of this channel knows does not go along.
 */
function parcelFor(to: HandOverTo, record: WalkRecord): WalkRecord {
  const { call, ...rest } = record;
  if (to === 'caller' || !call) return { ...rest, notes: [] };
  const { handsOver: _, asked: __, left: ___, wasLeft: ____, usualBefore: _____, ...kept } = call;
  return { ...rest, call: kept };
}

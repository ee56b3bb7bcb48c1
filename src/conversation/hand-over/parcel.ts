import type { WalkRecord } from '../record.ts';
import type { HandOverTo } from './terms.ts';

/**
 * What is left for somebody else: for the caller the answers alone, for a colleague the call with its notes and the
 * number to call back. What only this turn of this channel knows does not go along.
 */
export function parcelFor(to: HandOverTo, record: WalkRecord): WalkRecord {
  const { call, ...rest } = record;
  if (to === 'caller' || !call) return { ...rest, notes: [] };
  const { handsOver: _, asked: __, left: ___, wasLeft: ____, usualBefore: _____, ...kept } = call;
  return { ...rest, call: kept };
}

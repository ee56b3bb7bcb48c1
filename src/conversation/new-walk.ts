import type { Audience, UnitSystem } from '../wording/say.ts';
import type { CallState } from './call/call-state.ts';
import type { Programme } from './programme.ts';
import type { WalkId, WalkRecord } from './record.ts';

/** A walk in which nothing was asked yet. */
export function newWalk(
  programme: Programme,
  id: WalkId,
  now: Date,
  reader: {
    audience?: Audience;
    language?: string;
    units?: UnitSystem;
    /** Of a guided call: on whose behalf, and how long it may take. */
    call?: Pick<CallState, 'behalf' | 'minutes'>;
  } = {},
): WalkRecord {
  const { flow } = programme.checklist;
  return {
    id,
    flow: flow.fingerprint,
    audience: reader.audience ?? 'resident',
    language: reader.language ?? flow.walk.language,
    ...(reader.units === undefined ? {} : { units: reader.units }),
    ...(reader.call === undefined ? {} : { call: { ...reader.call, since: now.toISOString(), opened: [] } }),
    sheet: {},
    cursor: { phase: 'asking' },
    revision: 0,
    startedAt: now.toISOString(),
    updatedAt: now.toISOString(),
    notes: [],
  };
}

import { advance } from './advance.ts';
import { closeCall } from './call/closing.ts';
import { askToHandOver } from './hand-over/leave.ts';
import type { Programme } from './programme.ts';
import type { WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';

/** The answers are right: the list, or the end of a call; before it the caller is asked once whether they go on alone. */
export function confirm(programme: Programme, record: WalkRecord): Turned {
  const { call } = record;
  if (call?.handsOver && !call.asked && call.left?.colleague === undefined)
    return askToHandOver(record, call, 'caller', 'closing');
  const confirmed = advance(programme, record, { type: 'CONFIRM' });
  if (call) return closeCall(programme, confirmed);
  return { record: confirmed, parts: [say('report.here'), { kind: 'report' }] };
}

import { withoutPending, withPending } from '../advance.ts';
import type { CallState } from '../call/call-state.ts';
import type { Part, Reply } from '../message.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import type { LeftWalk } from './hand-over.ts';

/** Asks whether the answers may be passed on: they leave the volunteer's hands only with the caller's yes. */
export function askToHandOver(record: WalkRecord, state: CallState): Turned {
  const { hours } = state.handsOver ?? {};
  const values = hours === undefined ? { known: 'no', hours: 0 } : { known: 'yes', hours };
  return {
    record: withPending(record, { kind: 'handOver' }),
    parts: [say('hand-over.ask', values)],
  };
}

/** What a volunteer gets who asks for a code. */
export function takeHandOver(record: WalkRecord, state: CallState): Turned {
  if (!state.handsOver) return { record, parts: [say('hand-over.no-service')] };
  if (!state.opened.includes('consent')) return { record, parts: [say('hand-over.not-yet')] };
  return askToHandOver(record, state);
}

/** The caller said yes: the code is made once this turn is kept. */
export function agreeToHandOver(record: WalkRecord, state: CallState): Turned {
  const agreed = { ...withoutPending(record), call: { ...state, handed: true as const } };
  const { phase } = record.cursor;
  const then = phase === 'readBack' ? [say('hand-over.then-close', undefined, 'quiet')] : [];
  return { record: agreed, parts: then, handsOver: true };
}

/** The code and what to say with it; it is told last, so that it stands in sight. */
function leftParts(left: LeftWalk): Part[] {
  if (left.kind === 'failed') return [say('hand-over.failed', { why: left.why }, 'warning')];
  const { code, hours, reach, address } = left;
  const values = {
    code,
    hours,
    reach: reach ?? { text: 'hand-over.reach' },
    address: address ?? { text: 'hand-over.address' },
  };
  return [
    say('hand-over.code', values, 'heading'),
    say('hand-over.read', values),
    say('hand-over.text', values),
    say('hand-over.colleague', values, 'quiet'),
  ];
}

/** A reply with what became of leaving its walk. */
export function withLeft(reply: Reply, left: LeftWalk): Reply {
  return { ...reply, parts: [...leftParts(left), ...reply.parts] };
}

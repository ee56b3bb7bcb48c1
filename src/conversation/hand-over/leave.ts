import { withoutPending, withPending } from '../advance.ts';
import type { CallState } from '../call/call-state.ts';
import type { Part, Reply } from '../message.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';
import type { LeftWalk } from './hand-over.ts';
import type { HandOverTo } from './terms.ts';

/** Asks whether the call may be passed on: it leaves the volunteer's hands only with the caller's yes. */
export function askToHandOver(
  record: WalkRecord,
  state: CallState,
  to: HandOverTo,
  closing?: 'closing',
): Turned {
  const { hours } = state.handsOver ?? {};
  const values = hours === undefined ? { known: 'no', hours: 0 } : { known: 'yes', hours };
  return {
    record: withPending(record, { kind: 'handOver', to, ...(closing ? { closing: true } : {}) }),
    parts: [say(`hand-over.ask.${to}`, values)],
  };
}

/** What a volunteer gets who asks for a code. */
export function takeHandOver(record: WalkRecord, state: CallState, to: HandOverTo): Turned {
  if (!state.handsOver) return { record, parts: [say('hand-over.no-service')] };
  if (!state.opened.includes('consent')) return { record, parts: [say('hand-over.not-yet')] };
  return askToHandOver(record, state, to);
}

/** The moment from which a code is made: that of the code which still works, or of this turn. */
function sinceWhen(record: WalkRecord, { left, handsOver }: CallState, to: HandOverTo): string {
  const since = left?.[to];
  const hours = handsOver?.hours ?? 0;
  const over = since === undefined || Date.parse(record.updatedAt) > Date.parse(since) + hours * 3_600_000;
  return over ? record.updatedAt : since;
}

/** The caller said yes: the code is made once this turn is kept. */
export function agreeToHandOver(record: WalkRecord, state: CallState, to: HandOverTo): Turned {
  const left = { ...state.left, [to]: sinceWhen(record, state, to) };
  const call: CallState = { ...state, left, wasLeft: true, ...(to === 'caller' ? { asked: true } : {}) };
  return { record: { ...withoutPending(record), call }, parts: [], handsOver: to };
}

/** The code and what to say with it. */
function leftParts(left: LeftWalk, to: HandOverTo, reply: Reply): Part[] {
  if (left.kind === 'failed') return [say('hand-over.failed', { why: left.why }, 'warning')];
  const { code, hours, reach, address } = left;
  const values = {
    code,
    hours,
    reach: reach ?? { text: 'hand-over.reach' },
    address: address ?? { text: 'hand-over.address' },
  };
  const closes = reply.phase === 'readBack' && to === 'caller' ? [say('hand-over.then-close')] : [];
  const told =
    to === 'caller'
      ? [say('hand-over.read', values), say('hand-over.text', values)]
      : [say('hand-over.colleague', values)];
  return [say('hand-over.code', values, 'heading'), ...told, ...closes];
}

/** A reply with what became of leaving its walk. */
export function withLeft(reply: Reply, left: LeftWalk, to: HandOverTo): Reply {
  return { ...reply, parts: [...leftParts(left, to, reply), ...reply.parts] };
}

/** A reply with something that the volunteer has to know about what waits. */
export function withWarning(reply: Reply, text: string): Reply {
  return { ...reply, parts: [...reply.parts, say(text, undefined, 'warning')] };
}

import type { CallState } from '../../src/conversation/call/call-state.ts';
import type { Message } from '../../src/conversation/message.ts';
import { newWalk } from '../../src/conversation/new-walk.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import { type TurnTaken, takeTurn } from '../../src/conversation/turn.ts';
import { realProgramme } from '../support/programme.ts';
import { day } from '../support/walks.ts';

/** The opening, answered: no danger, at home, on the ground, consent, no number, the demonstration's county. */
export const opened = ['no', 'at home', 'yes', 'yes', 'skip', 'tamber county'] as const;

/** A call in which nothing was said yet. */
export function newCall(call: Pick<CallState, 'behalf' | 'minutes'> = {}): WalkRecord {
  return newWalk(realProgramme(), 'call-1' as WalkId, day, { audience: 'volunteer', call });
}

/** A turn at some seconds into the call. */
export function turnAt(record: WalkRecord, said: string | Message, seconds = 0): TurnTaken {
  const message: Message = typeof said === 'string' ? { kind: 'text', text: said } : said;
  return takeTurn(realProgramme(), record, message, new Date(day.getTime() + seconds * 1000));
}

/** Says one thing after another, from the greeting on; the last turn. */
export function call(lines: readonly string[], record = newCall()): TurnTaken {
  let last = turnAt(record, { kind: 'hello' });
  for (const line of lines) last = turnAt(last.record, line);
  return last;
}

/** The call after its opening, at the first question about the house. */
export function openCall(minutes?: number): WalkRecord {
  return call(opened, newCall(minutes === undefined ? {} : { minutes })).record;
}

import type { Values } from '../wording/say.ts';
import type { HandOverTo } from './hand-over/terms.ts';
import type { Part, Tone } from './message.ts';
import type { WalkRecord } from './record.ts';

/** What became of a message: the new record, and what to say before the next question. */
export interface Turned {
  readonly record: WalkRecord;
  readonly parts: readonly Part[];
  /** Everything kept of the walk is to be erased. */
  readonly erase?: true;
  /** The question is not shown again after it: what was said must stay in sight. */
  readonly alone?: true;
  /** The walk is to be left for somebody else, or what was left is to be brought up to date. */
  readonly handsOver?: HandOverTo | 'renew';
}

/** A part that says a text. */
export function say(text: string, values?: Values, tone: Tone = 'plain'): Part {
  return { kind: 'say', tone, text, ...(values ? { values } : {}) };
}

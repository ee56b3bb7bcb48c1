import type { AnswerSheet } from '../../answers/answer.ts';
import { isOpen, pathOf } from '../../answers/path.ts';
import { cleanText } from '../../answers/reading/clean-text.ts';
import { withoutPending, withPending } from '../advance.ts';
import type { CallState } from '../call/call-state.ts';
import { usualSeconds } from '../call/short-call.ts';
import { fittingAnswers } from '../flow-changed.ts';
import type { Message, Part } from '../message.ts';
import type { Programme } from '../programme.ts';
import { readFor } from '../read.ts';
import { readClearly } from '../read-yes-no.ts';
import type { Cursor, WalkRecord } from '../record.ts';
import { say } from '../turned.ts';
import type { FoundCode } from './hand-over.ts';

/** A code that was written, or waited for a yes, and what it leads to. */
export type CodeMet = FoundCode & { readonly typed: boolean };

/** What a code does to a walk. */
export interface Meeting {
  readonly record: WalkRecord;
  readonly parts: readonly Part[];
  /** The walk that waited is in the record now; its key in the store. */
  readonly takes?: string;
}

/** Whether something else is waited for, which the text answers whatever it looks like. */
function isBusy({ cursor, silent }: WalkRecord): boolean {
  const { phase, pending } = cursor;
  if (silent || phase === 'emergency') return true;
  if (pending?.kind === 'opening') return pending.ask === 'number';
  return pending !== undefined && pending.kind !== 'takeOver';
}

/** A call that goes on with somebody else: its time begins anew. */
function callOver(programme: Programme, own: WalkRecord, given: WalkRecord): CallState {
  const usualBefore = usualSeconds(programme, given);
  const begun = { since: given.updatedAt, takenOver: true as const, usualBefore };
  // With the code of a caller a volunteer gets the answers alone: the opening is theirs.
  if (!given.call) return { ...own.call, ...begun, opened: [] };
  const behalf = own.call?.behalf ?? given.call.behalf;
  const { minutes: _, ...call } = given.call;
  return { ...call, ...(behalf === undefined ? {} : { behalf }), ...begun };
}

/** What waits goes on where it stopped; a walk that ended early goes on with what was not asked. */
function cursorOver(programme: Programme, cursor: Cursor, sheet: AnswerSheet): Cursor {
  const { steps, byKey } = pathOf(programme.checklist.index, sheet);
  const { phase, key } = cursor;
  if (!steps.some((step) => isOpen(step, sheet)))
    return { phase: phase === 'finished' ? 'finished' : 'readBack' };
  return phase === 'asking' && key !== undefined && byKey.has(key) ? { phase, key } : { phase: 'asking' };
}

/**
 * The walk as it goes on with whoever has the code, in place of their own. A volunteer gets the call with its notes and
 * the number to call back; anybody else gets the answers only.
 */
export function carriedOver(programme: Programme, own: WalkRecord, given: WalkRecord): WalkRecord {
  const { call: _, silent: __, units: theirs, ...rest } = given;
  const units = own.units ?? theirs;
  const call = own.audience === 'volunteer' ? callOver(programme, own, given) : undefined;
  // It comes from outside: what is no answer to a question is left out.
  const sheet = fittingAnswers(programme, given);
  return {
    ...rest,
    id: own.id,
    audience: own.audience,
    language: own.language,
    sheet,
    cursor: cursorOver(programme, given.cursor, sheet),
    revision: own.revision,
    ...(units === undefined ? {} : { units }),
    notes: call ? given.notes : [],
    ...(call ? { call } : {}),
  };
}

/** Said to whoever goes on; danger comes before anything else, since time has passed. */
function takenParts(record: WalkRecord): Part[] {
  const answered = Object.keys(record.sheet).length;
  // A call says so itself as it goes on.
  if (record.call) return [];
  return [
    say('hand-over.taken', { answered }, 'heading'),
    say('opening.danger', undefined, 'warning'),
    say('opening.how'),
  ];
}

/**
 * What a code does: takes the walk that waits, asks first where answers stand already, or says why it does nothing.
 * Nothing when the text is not to be read as a code.
 */
export function meetCode(
  programme: Programme,
  stored: WalkRecord,
  said: Message,
  met: CodeMet,
): Meeting | undefined {
  if (said.kind !== 'text' || isBusy(stored)) return undefined;
  const { checklist } = programme;
  // A text may speak of danger, whatever else stands in it.
  if (readFor(checklist, stored, undefined, cleanText(said.text)).kind === 'emergency') return undefined;
  const agreed = !met.typed && readClearly(checklist, stored, said.text, 'request') === 'yes';
  if (!met.typed && !agreed) return undefined;
  if (met.kind !== 'walk') return { record: withoutPending(stored), parts: [say(`hand-over.${met.kind}`)] };
  const answered = Object.keys(stored.sheet).length;
  if (answered > 0 && !agreed) {
    const record = withPending(stored, { kind: 'takeOver', code: met.code });
    return { record, parts: [say('hand-over.instead', { answered })] };
  }
  const record = carriedOver(programme, stored, met.walk);
  return { record, parts: takenParts(record), takes: met.key };
}

import { pathOf } from '../../answers/path.ts';
import type { Programme } from '../programme.ts';
import type { WalkRecord } from '../record.ts';
import { say, type Turned } from '../turned.ts';

/** Keeps a note beside the question that is asked now. */
export function keepNote(programme: Programme, record: WalkRecord, text: string): Turned {
  if (text === '') return { record, parts: [say('call.note-what')] };
  const { key } = record.cursor;
  const step = key === undefined ? undefined : pathOf(programme.checklist.index, record.sheet).byKey.get(key);
  const note = { ...(step ? { key: step.key } : {}), text };
  const about = step
    ? { about: 'one', question: { text: `question/${step.question.id}/short` } }
    : { about: 'none', question: '' };
  return {
    record: { ...record, notes: [...record.notes, note] },
    parts: [say('call.noted', about, 'quiet')],
  };
}

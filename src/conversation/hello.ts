import { askSafe } from './emergency.ts';
import type { Programme } from './programme.ts';
import { readBackParts } from './read-back.ts';
import type { WalkRecord } from './record.ts';
import { resume } from './take-text.ts';
import { say, type Turned } from './turned.ts';

/** A person arrives or comes back. */
export function hello(programme: Programme, record: WalkRecord): Turned {
  const { phase } = record.cursor;
  const answered = Object.keys(record.sheet).length;
  if (phase === 'emergency') return askSafe(record);
  if (phase === 'paused') return resume(programme, record);
  if (phase === 'finished')
    return {
      record,
      parts: [say('report.here'), { kind: 'report' }, say('help.finished', undefined, 'quiet')],
    };
  if (phase === 'readBack') return { record, parts: readBackParts(programme.checklist, record) };
  if (answered > 0) return { record, parts: [say('walk.welcome-back', { answered })] };
  return {
    record,
    parts: [
      say('opening.what', undefined, 'heading'),
      say('opening.danger', undefined, 'warning'),
      say('opening.how'),
      say('opening.promise', undefined, 'quiet'),
    ],
  };
}

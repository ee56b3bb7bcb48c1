import { closingParts } from './call/closing.ts';
import { openingParts, resumedParts } from './call/opening.ts';
import { askSafe } from './emergency.ts';
import type { Part } from './message.ts';
import type { Programme } from './programme.ts';
import { readBackParts } from './read-back.ts';
import type { WalkRecord } from './record.ts';
import { resume } from './take-text.ts';
import { say, type Turned } from './turned.ts';

function welcomeBack(programme: Programme, record: WalkRecord): Turned {
  const resumed = resume(programme, record);
  return record.call ? { ...resumed, parts: resumedParts(record, record.call) } : resumed;
}

function finishedBefore(programme: Programme, record: WalkRecord): Turned {
  const parts: Part[] = record.call
    ? closingParts(programme, record)
    : [say('report.here'), { kind: 'report' }];
  return { record, parts: [...parts, say('help.finished', undefined, 'quiet')] };
}

/** A person arrives or comes back. */
export function hello(programme: Programme, record: WalkRecord): Turned {
  const { phase } = record.cursor;
  const answered = Object.keys(record.sheet).length;
  if (phase === 'emergency') return askSafe(record);
  if (phase === 'paused') return welcomeBack(programme, record);
  if (phase === 'finished') return finishedBefore(programme, record);
  if (phase === 'readBack') return { record, parts: readBackParts(programme.checklist, record) };
  if (record.call && answered > 0) return { record, parts: resumedParts(record, record.call) };
  if (record.call) return { record, parts: openingParts(record.call) };
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

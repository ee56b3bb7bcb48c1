import { withoutPassing } from './advance.ts';
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
  return record.call ? { ...resumed, parts: resumedCall(record) } : resumed;
}

function finishedBefore(programme: Programme, record: WalkRecord): Turned {
  const parts: Part[] = record.call
    ? [...(record.call.takenOver ? resumedCall(record) : []), ...closingParts(programme, record)]
    : [say('report.here'), { kind: 'report' }];
  return { record, parts: [...parts, say('help.finished', undefined, 'quiet')] };
}

/** What a volunteer is told who comes back to a call, before what comes next. */
const resumedCall = (record: WalkRecord): Part[] => (record.call ? resumedParts(record, record.call) : []);

/** A person arrives or comes back. */
export function hello(programme: Programme, stored: WalkRecord): Turned {
  const record = withoutPassing(stored);
  const { phase, pending } = record.cursor;
  if (pending?.kind === 'emergency')
    return { record, parts: [say('emergency.is-it', { said: pending.matched }, 'warning')] };
  const answered = Object.keys(record.sheet).length;
  if (phase === 'emergency') return askSafe(record);
  if (phase === 'paused') return welcomeBack(programme, record);
  if (phase === 'finished') return finishedBefore(programme, record);
  if (phase === 'readBack')
    return { record, parts: [...resumedCall(record), ...readBackParts(programme.checklist, record)] };
  if (record.call && answered > 0) return { record, parts: resumedCall(record) };
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

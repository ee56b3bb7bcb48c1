import type { Step } from '../answers/path.ts';
import { cleanText } from '../answers/reading/clean-text.ts';
import type { Reading } from '../answers/reading/reading.ts';
import { advance, withoutPassing, withoutPending, withPending } from './advance.ts';
import { wantsToGuide } from './call/guide-call.ts';
import { takeOpeningText } from './call/opening.ts';
import { takeCallText } from './call/take-call-text.ts';
import { confirm } from './confirm.ts';
import { changeAnswer, goBack, jumpTo, removeMember } from './edits.ts';
import { askSafe, goOnSafe, stopForEmergency } from './emergency.ts';
import { helpParts, whereParts, whyParts } from './explain.ts';
import { notUnderstoodParts } from './not-understood.ts';
import type { Programme } from './programme.ts';
import { currentStep, readFor } from './read.ts';
import { readBackParts } from './read-back.ts';
import { readClearly, readYesNo } from './read-yes-no.ts';
import type { WalkRecord } from './record.ts';
import { takeAnswer } from './take-answer.ts';
import { takePending } from './take-pending.ts';
import { say, type Turned } from './turned.ts';

/** Reads what a person wrote and does it. */
export function takeText(programme: Programme, record: WalkRecord, raw: string): Turned {
  const text = cleanText(raw);
  const { checklist } = programme;
  const step = currentStep(checklist, record);
  const reading = readFor(checklist, record, step, text);
  if (reading.kind === 'emergency' && reading.sure) return stopForEmergency(programme, record);
  if (record.cursor.phase === 'emergency') return takeSafe(programme, record, text);
  const called = takeCallText(programme, record, text, reading);
  if (called) return called;
  const answered = takeShortAnswer(programme, record, text, reading);
  if (answered) return answered;
  if (reading.kind === 'emergency') {
    const pending = withPending(record, { kind: 'emergency', matched: reading.matched });
    return { record: pending, parts: [say('emergency.is-it', { said: reading.matched }, 'warning')] };
  }
  return takeFree(programme, withoutPassing(record), text, reading, step);
}

/** What is said to a short question that waits; danger is asked about before it. */
function takeShortAnswer(
  programme: Programme,
  record: WalkRecord,
  text: string,
  reading: Reading,
): Turned | undefined {
  const { pending } = record.cursor;
  if (!pending) return undefined;
  if (pending.kind === 'opening') return takeOpeningText(programme, record, text, reading);
  if (reading.kind === 'emergency' && pending.kind !== 'emergency') return undefined;
  return takePending(programme, record, text, reading);
}

/** What is said while nothing but the walk waits. */
function takeFree(
  programme: Programme,
  record: WalkRecord,
  text: string,
  reading: Exclude<Reading, { kind: 'emergency' }>,
  step: Step | undefined,
): Turned {
  const forgetting = reading.kind === 'command' && reading.command === 'forget';
  if (record.cursor.phase === 'paused' && !forgetting) return resume(programme, record);
  if (wantsToGuide(programme, record, text)) return { record, parts: [say('hand-over.start-over-first')] };
  if (reading.kind === 'answer' && step)
    return takeAnswer(programme, record, step, reading.answer, reading.note);
  if (reading.kind === 'notUnderstood' || reading.kind === 'answer')
    return takeOther(programme, record, text, reading);
  return takeRequest(programme, record, reading);
}

function takeSafe(programme: Programme, record: WalkRecord, text: string): Turned {
  const safe = readClearly(programme.checklist, record, text, 'safe');
  if (safe === 'yes') return goOnSafe(programme, withoutPending(record));
  return safe === 'no' ? stopForEmergency(programme, record) : askSafe(record);
}

/** Goes on after a pause. */
export function resume(programme: Programme, record: WalkRecord): Turned {
  return { record: advance(programme, record, { type: 'RESUME' }), parts: [say('walk.resumed')] };
}

/** What is said while no question is asked, or what was not understood while one is. */
function takeOther(programme: Programme, record: WalkRecord, text: string, reading: Reading): Turned {
  const { checklist } = programme;
  const { phase } = record.cursor;
  if (phase === 'readBack') {
    const right = readYesNo(checklist, record, text);
    if (right === 'yes') return confirm(programme, record);
    return { record, parts: [say(right === 'no' ? 'read-back.what-to-change' : 'help.readBack')] };
  }
  if (phase === 'finished') return { record, parts: [say('help.finished')] };
  if (reading.kind !== 'notUnderstood') return { record, parts: [say('help.asking')] };
  return { record, parts: notUnderstoodParts(currentStep(checklist, record), reading) };
}

type Request = Exclude<Reading, { kind: 'emergency' | 'answer' | 'notUnderstood' }>;

function takeRequest(programme: Programme, record: WalkRecord, reading: Request): Turned {
  if (reading.kind === 'jump') return jumpTo(programme, record, reading.stop);
  if (reading.kind === 'change') return changeAnswer(programme, record, reading);
  if (reading.kind === 'remove') return removeMember(programme, record, reading);
  const { checklist } = programme;
  switch (reading.command) {
    case 'back':
      return goBack(programme, record);
    case 'help':
      return { record, parts: helpParts(checklist, record) };
    case 'why':
      return { record, parts: whyParts(checklist, record) };
    case 'where':
      return { record, parts: whereParts(checklist, record) };
    case 'pause':
    case 'stop':
      return pause(programme, record);
    case 'startOver':
      return { record: withPending(record, { kind: 'startOver' }), parts: [say('walk.start-over-sure')] };
    case 'forget':
      return { record: withPending(record, { kind: 'forget' }), parts: [say('walk.forget-sure')] };
    case 'finish':
      return finish(programme, record);
  }
}

function pause(programme: Programme, record: WalkRecord): Turned {
  const paused = advance(programme, record, { type: 'PAUSE', at: record.cursor.key });
  return { record: paused, parts: [say('walk.paused')] };
}

/** Ends early or late: the answers are read back first; said again there, the list is shown. */
function finish(programme: Programme, record: WalkRecord): Turned {
  if (record.cursor.phase !== 'asking') return confirm(programme, record);
  const finished = advance(programme, record, { type: 'FINISH' });
  return { record: finished, parts: readBackParts(programme.checklist, finished) };
}

import type { Answer } from '../answers/answer.ts';
import type { Step } from '../answers/path.ts';
import type { ReadingNote } from '../answers/reading/reading.ts';
import { advance } from './advance.ts';
import { kindsWith } from './answer-kinds.ts';
import { stepValues } from './ask.ts';
import { stopForEmergency } from './emergency.ts';
import type { Part } from './message.ts';
import type { Programme } from './programme.ts';
import type { WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';

/** An answer for some sides goes over what stands for the others. */
function merged(before: Answer | undefined, now: Answer): Answer {
  if (now.status !== 'bySide' || before?.status !== 'bySide') return now;
  return { status: 'bySide', sides: { ...before.sides, ...now.sides } };
}

function noteParts(note: ReadingNote | undefined): Part[] {
  if (!note) return [];
  const parts: Part[] = [];
  if (note.assumedUnit) parts.push(say('note.assumed-unit', { unit: note.assumedUnit }, 'quiet'));
  if (note.range) parts.push(say('note.range', undefined, 'quiet'));
  if (note.missing?.length) parts.push(say('note.missing', { sides: { sides: note.missing } }));
  if (note.notAsked?.length) parts.push(say('note.not-asked', { sides: { sides: note.notAsked } }, 'quiet'));
  if (note.cutTo !== undefined) parts.push(say('note.cut', { count: note.cutTo }, 'quiet'));
  return parts;
}

/** Puts an answer on the sheet, says how it was taken, and goes on; an answer that speaks of danger stops the walk. */
export function takeAnswer(
  programme: Programme,
  record: WalkRecord,
  step: Step,
  answer: Answer,
  note?: ReadingNote,
): Turned {
  // Whether to leave is not left open: whoever is not sure looks, and is asked again.
  if (step.question.role === 'danger' && answer.status !== 'given')
    return { record, parts: [say('danger.look', undefined, 'warning')] };
  const whole = merged(record.sheet[step.key], answer);
  const known = { ...record, kinds: kindsWith(record.kinds, step.question) };
  const next = advance(programme, known, { type: 'ANSWER', key: step.key, answer: whole });
  const danger = step.question.role === 'danger' && answer.status === 'given' && answer.value === 'yes';
  if (danger) return stopForEmergency(programme, next);
  const values = {
    ...stepValues(programme.checklist, next, step),
    answer: { answer: whole, question: step.question.id },
  };
  const taken =
    answer.status === 'notSure'
      ? 'note.not-sure'
      : answer.status === 'skipped'
        ? 'note.skipped'
        : 'note.taken';
  return { record: next, parts: [say(taken, values, 'quiet'), ...noteParts(note)] };
}

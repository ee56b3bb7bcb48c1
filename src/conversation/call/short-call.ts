import { isOpen, pathOf } from '../../answers/path.ts';
import { leftOut, nextQuestion } from '../../planning/next-question.ts';
import { advance } from '../advance.ts';
import type { Part } from '../message.ts';
import type { Programme } from '../programme.ts';
import type { WalkRecord } from '../record.ts';
import { say } from '../turned.ts';
import type { CallState } from './call-state.ts';

/** Kept for closing the call: reading out, sending, saying goodbye. Judgement. */
const closingSeconds = 60;
const shown = 6;

/** Seconds since a call began, without the time for which it was interrupted. */
function secondsSince(state: CallState, now: Date): number {
  return Math.max(0, (now.getTime() - Date.parse(state.since)) / 1000);
}

/** Seconds that answers of the path usually take to get, as the flow says. */
export function usualSeconds(programme: Programme, record: WalkRecord): number {
  const { steps } = pathOf(programme.checklist.index, record.sheet);
  return steps
    .filter((step) => !isOpen(step, record.sheet))
    .reduce((sum, step) => sum + step.question.seconds, 0);
}

/** What is left for questions: the clock decides, or what was asked already where that usually takes longer. */
function secondsLeft(programme: Programme, record: WalkRecord, minutes: number, now: Date): number {
  const clock = record.call ? secondsSince(record.call, now) : 0;
  // What somebody else asked before took none of this call's time.
  const usual = usualSeconds(programme, record) - (record.call?.usualBefore ?? 0);
  return minutes * 60 - closingSeconds - Math.max(clock, usual);
}

/** To the question that is worth most of the time that is left; where none fits, to the end. */
export function goToMostTelling(
  programme: Programme,
  record: WalkRecord,
  minutes: number,
  now: Date,
): WalkRecord {
  const seconds = secondsLeft(programme, record, minutes, now);
  const step = nextQuestion(programme.checklist, record.sheet, { seconds });
  if (!step) return advance(programme, record, { type: 'FINISH' });
  return advance(programme, record, { type: 'GO', key: step.key });
}

/** What was not asked, the most telling by name. */
export function leftOutParts(programme: Programme, record: WalkRecord): Part[] {
  const left = leftOut(programme.checklist, record.sheet);
  if (left.length === 0) return [say('call.left-out.none')];
  const names = [...new Set(left.map((step) => step.question.id))];
  const questions = names.slice(0, shown).map((id) => ({ text: `question/${id}/short` }));
  return [say('call.left-out', { questions: { list: questions }, more: names.length - questions.length })];
}

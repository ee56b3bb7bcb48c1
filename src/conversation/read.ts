import type { AnswerSheet } from '../answers/answer.ts';
import { membersOf, openSides, pathOf, type Step } from '../answers/path.ts';
import { readMessage } from '../answers/reading/read-message.ts';
import type { Reading } from '../answers/reading/reading.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { WalkRecord } from './record.ts';
import { unitsOf } from './units.ts';
import { wordsOf } from './words-of.ts';

/** Every key of a group that stands anywhere on the sheet, so that none is given out twice. */
function usedMembers(sheet: AnswerSheet, group: string): string[] {
  const keys = Object.keys(sheet).flatMap((key) =>
    key.startsWith(`${group}/`) ? [key.split('/')[1] ?? ''] : [],
  );
  return [...new Set(keys)];
}

/** Reads a text against a step of the walk, or against none. */
export function readFor(
  checklist: Checklist,
  record: WalkRecord,
  step: Step | undefined,
  text: string,
): Reading {
  const { flow, index } = checklist;
  const words = wordsOf(checklist, record);
  if (!words) throw new Error(`The flow has no words for "${record.language}".`);
  const group = step?.question.counts;
  const members = group === undefined ? [] : membersOf(index, record.sheet, group);
  const open = step ? openSides(step, record.sheet) : [];
  const before = step && record.sheet[step.key];
  return readMessage(text, {
    question: step?.question,
    words,
    stops: flow.stops,
    questions: flow.questions,
    groups: flow.groups,
    sides: open.length > 0 ? open : (step?.sides ?? []),
    units: unitsOf(checklist, record.sheet, record.units),
    members,
    usedMembers: group === undefined ? [] : [...new Set([...members, ...usedMembers(record.sheet, group)])],
    ...(before ? { before } : {}),
  });
}

/** The step that a record asks now. */
export function currentStep(checklist: Checklist, record: WalkRecord): Step | undefined {
  const { key, phase } = record.cursor;
  return phase === 'asking' && key !== undefined
    ? pathOf(checklist.index, record.sheet).byKey.get(key)
    : undefined;
}

import type { AnswerKey } from '../answers/answer.ts';
import { isOpen, membersOf, pathOf, type Step } from '../answers/path.ts';
import { advance } from './advance.ts';
import { stepValues } from './ask.ts';
import type { Programme } from './programme.ts';
import type { WalkRecord } from './record.ts';
import { say, type Turned } from './turned.ts';

function go(programme: Programme, record: WalkRecord, key: AnswerKey): WalkRecord {
  return advance(programme, record, { type: 'GO', key });
}

/** Back to the question before this one on the path; from the end, to the last. */
export function goBack(programme: Programme, record: WalkRecord): Turned {
  const { steps } = pathOf(programme.checklist.index, record.sheet);
  const { key, phase } = record.cursor;
  const here = phase === 'asking' ? steps.findIndex((step) => step.key === key) : steps.length;
  const before = steps[here - 1];
  if (!before) return { record, parts: [say('walk.at-the-start')] };
  return { record: go(programme, record, before.key), parts: [] };
}

/** To a part of the walk: its first question that waits, else its first. */
export function jumpTo(programme: Programme, record: WalkRecord, stop: string): Turned {
  const path = pathOf(programme.checklist.index, record.sheet);
  const there = path.steps.filter((step) => step.question.stop === stop);
  const target = there.find((step) => isOpen(step, record.sheet)) ?? there[0];
  const values = { stop: { text: `stop/${stop}/title` } };
  if (!target) return { record, parts: [say('walk.nothing-there', values)] };
  return { record: go(programme, record, target.key), parts: [] };
}

/** The step of a question that is about the member talked about, else the first. */
function stepFor(programme: Programme, record: WalkRecord, question: string): Step | undefined {
  const { steps, byKey } = pathOf(programme.checklist.index, record.sheet);
  const here = record.cursor.key === undefined ? undefined : byKey.get(record.cursor.key);
  const same = steps.filter((step) => step.question.id === question);
  return same.find((step) => step.member === here?.member) ?? same[0];
}

/** Asks an earlier question again. */
export function changeAnswer(
  programme: Programme,
  record: WalkRecord,
  wanted: { stop?: string; question?: string },
): Turned {
  if (wanted.question !== undefined) {
    const step = stepFor(programme, record, wanted.question);
    if (step) return { record: go(programme, record, step.key), parts: [say('walk.again')] };
    return {
      record,
      parts: [say('walk.not-on-path', { question: { text: `question/${wanted.question}/ask` } })],
    };
  }
  if (wanted.stop !== undefined) {
    const first = pathOf(programme.checklist.index, record.sheet).steps.find(
      (one) => one.question.stop === wanted.stop,
    );
    if (first) return { record: go(programme, record, first.key), parts: [say('walk.again')] };
  }
  const stops = programme.checklist.flow.stops.map((stop) => ({ text: `stop/${stop.id}/title` }));
  return { record, parts: [say('walk.change-what', { stops: { list: stops, join: 'or' } })] };
}

/** Takes a member out of its group; its key is never used again. */
export function removeMember(
  programme: Programme,
  record: WalkRecord,
  wanted: { group?: string; member?: string },
): Turned {
  const { index } = programme.checklist;
  const here =
    record.cursor.key === undefined ? undefined : pathOf(index, record.sheet).byKey.get(record.cursor.key);
  const group = wanted.group ?? here?.group;
  const member = wanted.member ?? here?.member;
  const count = group === undefined ? undefined : index.countQuestions.get(group);
  if (group === undefined || member === undefined || !count)
    return { record, parts: [say('walk.remove-what')] };
  const members = membersOf(index, record.sheet, group);
  if (!members.includes(member)) return { record, parts: [say('walk.remove-what')] };
  const step = pathOf(index, record.sheet).steps.find((one) => one.member === member && one.group === group);
  const values = step ? stepValues(programme.checklist, record, step) : {};
  const value = members.filter((one) => one !== member);
  const answer = { status: 'given', value } as const;
  return {
    record: advance(programme, record, { type: 'ANSWER', key: count.id, answer }),
    parts: [say('walk.removed', values)],
  };
}

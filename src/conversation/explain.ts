import { pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Part } from './message.ts';
import { progressOf } from './progress.ts';
import type { WalkRecord } from './record.ts';
import { say } from './turned.ts';

function stepOf(checklist: Checklist, record: WalkRecord): Step | undefined {
  const { key } = record.cursor;
  return key === undefined ? undefined : pathOf(checklist.index, record.sheet).byKey.get(key);
}

/** The cautions of a question; a caller, who stays on the ground, is not told how to go inside an attic. */
function cautionsHere({ flow }: Checklist, { call }: WalkRecord, step: Step): readonly string[] {
  const unsaid = new Set(call ? flow.cautions.filter((one) => one.notInCalls).map((one) => one.id) : []);
  return step.question.cautions.filter((id) => !unsaid.has(id));
}

/** How to look, what good looks like, and what else may be typed. */
export function helpParts(checklist: Checklist, record: WalkRecord): Part[] {
  const step = stepOf(checklist, record);
  if (!step || record.cursor.phase !== 'asking') return [say(`help.${record.cursor.phase}`)];
  const id = step.question.id;
  return [
    say('help.look', { text: { text: `question/${id}/look` } }),
    say('help.good', { text: { text: `question/${id}/good` } }),
    ...cautionsHere(checklist, record, step).map((id) => say(`caution/${id}`, undefined, 'warning')),
    say('help.commands', undefined, 'quiet'),
  ];
}

/** Why the question is asked. */
export function whyParts(checklist: Checklist, record: WalkRecord): Part[] {
  const step = stepOf(checklist, record);
  if (!step || record.cursor.phase !== 'asking') return [say(`help.${record.cursor.phase}`)];
  return [say(`question/${step.question.id}/why`)];
}

/** Where on the walk the person is, and how much is left. */
export function whereParts(checklist: Checklist, record: WalkRecord): Part[] {
  const { stops, stop, answered, asked } = progressOf(checklist, record);
  const ahead = stops.filter((one) => one.state === 'ahead').map((one) => ({ text: one.title }));
  const here =
    stop === undefined ? [] : [say('walk.where', { stop: { text: `stop/${stop}/title` }, answered, asked })];
  const left =
    ahead.length > 0 ? [say('walk.still-ahead', { stops: { list: ahead, join: 'and' as const } })] : [];
  return here.length + left.length > 0 ? [...here, ...left] : [say('walk.all-answered', { answered })];
}

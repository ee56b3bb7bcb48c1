import { isOpen, pathOf } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Progress } from './message.ts';
import type { WalkRecord } from './record.ts';

/** How far a walk is: by stop, and how many of the questions on its path have an answer. */
export function progressOf(checklist: Checklist, record: WalkRecord): Progress {
  const path = pathOf(checklist.index, record.sheet);
  const { key, phase } = record.cursor;
  const here = phase === 'asking' && key !== undefined ? path.byKey.get(key)?.question.stop : undefined;
  const open = new Set(
    path.steps.filter((step) => isOpen(step, record.sheet)).map((step) => step.question.stop),
  );
  const stops = checklist.flow.stops.map((stop) => ({
    id: stop.id,
    title: `stop/${stop.id}/title`,
    state: stop.id === here ? ('here' as const) : open.has(stop.id) ? ('ahead' as const) : ('done' as const),
  }));
  const answered = path.steps.filter((step) => !isOpen(step, record.sheet)).length;
  return { stop: here, stops, answered, asked: path.steps.length };
}

import { isOpen, pathOf, type Step } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import { stepValues } from './ask.ts';
import type { Part } from './message.ts';
import type { WalkRecord } from './record.ts';
import { say } from './turned.ts';

function line(checklist: Checklist, record: WalkRecord, step: Step) {
  const answer = record.sheet[step.key];
  if (!answer) return [];
  const values = stepValues(checklist, record, step);
  const label = { text: `question/${step.question.id}/short`, values };
  return [
    { text: 'read-back.line', values: { ...values, label, answer: { answer, question: step.question.id } } },
  ];
}

/** All answers on the path, short, by stop, for the person to correct before the list. */
export function readBackParts(checklist: Checklist, record: WalkRecord): Part[] {
  const path = pathOf(checklist.index, record.sheet);
  const answered = path.steps.filter((step) => !isOpen(step, record.sheet));
  const open = path.steps.length - answered.length;
  const parts = checklist.flow.stops.flatMap((stop): Part[] => {
    const lines = answered
      .filter((step) => step.question.stop === stop.id)
      .flatMap((step) => line(checklist, record, step));
    return lines.length > 0 ? [{ kind: 'readBack', stop: stop.id, lines }] : [];
  });
  return [
    say('read-back.intro', undefined, 'heading'),
    ...parts,
    ...(open > 0 ? [say('read-back.open', { open })] : []),
    say('read-back.confirm'),
  ];
}

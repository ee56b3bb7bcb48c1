import type { Step } from '../answers/path.ts';
import type { NotUnderstood } from '../answers/reading/reading.ts';
import { optionIds } from '../flow/checks/check-condition.ts';
import type { Value, Values } from '../wording/say.ts';
import type { Part } from './message.ts';
import { say } from './turned.ts';

function optionLabel(step: Step, id: string): Value {
  const { question } = step;
  if (question.kind === 'yesNo') return { text: `words/yesNo/${id}` };
  if (question.kind === 'sides') return { text: `words/side/${id}` };
  const known = question.picks?.some((pick) => String(pick.value) === id) || optionIds(question).includes(id);
  return known ? { text: `option/${question.id}/${id}` } : id;
}

function measure(step: Step | undefined, value: number): Value {
  if (step?.question.kind === 'length') return { metres: value };
  return step?.question.kind === 'slope' ? { percent: value } : value;
}

/** The values of a problem as a text can say them. */
function problemValues(step: Step | undefined, { problem, nearest }: NotUnderstood): Values {
  const values: Record<string, Value> = {};
  const labels = step && nearest ? nearest.map((id) => optionLabel(step, id)) : [];
  if (labels.length > 0) values['nearest'] = { list: labels, join: 'or' };
  if ('sides' in problem) values['sides'] = { sides: problem.sides };
  if ('side' in problem) values['sides'] = { sides: [problem.side] };
  if ('last' in problem) Object.assign(values, { number: problem.number, last: problem.last });
  if ('count' in problem) Object.assign(values, { count: problem.count, max: problem.max });
  if (problem.code === 'outside') {
    values['value'] = problem.value === undefined ? { text: 'words/that' } : measure(step, problem.value);
    if (problem.min !== undefined) values['min'] = measure(step, problem.min);
    if (problem.max !== undefined) values['max'] = measure(step, problem.max);
  }
  if ('said' in problem) values['said'] = problem.said;
  return values;
}

function phraseOf({ problem, nearest }: NotUnderstood): string {
  if (problem.code === 'outside') {
    const ends = `${problem.min === undefined ? '' : '-min'}${problem.max === undefined ? '' : '-max'}`;
    return `not-understood.outside${ends}`;
  }
  if (problem.code === 'noMatch' && nearest?.length) return 'not-understood.did-you-mean';
  return `not-understood.${problem.code}`;
}

/** One friendly line: what was not understood, and what would be. The question with its choices follows. */
export function notUnderstoodParts(step: Step | undefined, reading: NotUnderstood): Part[] {
  const line = say(phraseOf(reading), problemValues(step, reading));
  const { kind } = step?.question ?? {};
  const measured = kind === 'length' || kind === 'slope' || kind === 'number';
  return measured && reading.problem.code === 'noMatch' ? [say('not-understood.notAMeasure')] : [line];
}

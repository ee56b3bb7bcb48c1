import { stringify } from 'yaml';
import { type Answer, type AnswerSheet, answerKey, type PlainAnswer } from '../answers/answer.ts';
import { membersOf } from '../answers/path.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Question } from '../flow/flow.ts';

type Units = 'imperial' | 'metric';

/** A length in the unit in which it is a short number, else in metres to the last digit: it reads back the same. */
function lengthText(value: number, units: Units): string {
  const tried =
    units === 'imperial'
      ? ([
          ['ft', 0.3048],
          ['in', 0.0254],
        ] as const)
      : ([
          ['m', 1],
          ['cm', 0.01],
          ['mm', 0.001],
        ] as const);
  for (const [unit, size] of tried) {
    const number = Number((value / size).toPrecision(6));
    if (Math.abs(number * size - value) <= 1e-12 * Math.max(1, value) && String(number).length <= 6)
      return `${number} ${unit}`;
  }
  return `${value} m`;
}

function plainValue(question: Question, answer: PlainAnswer, units: Units): unknown {
  if (answer.status === 'notSure') return 'not sure';
  if (answer.status === 'skipped') return 'skip';
  const { value } = answer;
  if (typeof value !== 'number') return value;
  if (question.kind === 'length') return lengthText(value, units);
  return question.kind === 'slope' ? `${value} %` : value;
}

function fileValue(question: Question, answer: Answer, units: Units): unknown {
  if (answer.status !== 'bySide') return plainValue(question, answer, units);
  return Object.fromEntries(
    Object.entries(answer.sides).map(([side, one]) => [side, plainValue(question, one, units)]),
  );
}

function memberEntries(checklist: Checklist, sheet: AnswerSheet, group: string, units: Units): unknown[] {
  const questions = checklist.flow.questions.filter((one) => one.of === group);
  return membersOf(checklist.index, sheet, group).map((member) => {
    const answers = questions.flatMap((question) => {
      const answer = sheet[answerKey(question.id, group, member)];
      return answer ? [[question.id, fileValue(question, answer, units)] as const] : [];
    });
    return { key: member, ...Object.fromEntries(answers) };
  });
}

/** The answers of a walk as YAML in the order of the walk; `walk --answers` reads them back to the same sheet. */
export function answersAsYaml(checklist: Checklist, sheet: AnswerSheet, units: Units): string {
  const entries: [string, unknown][] = [];
  const groups = new Set<string>();
  for (const question of checklist.flow.questions) {
    if (question.of !== undefined) {
      if (!groups.has(question.of))
        entries.push([question.of, memberEntries(checklist, sheet, question.of, units)]);
      groups.add(question.of);
      continue;
    }
    const answer = sheet[question.id];
    const counted = question.counts !== undefined && answer?.status === 'given';
    if (answer && !counted) entries.push([question.id, fileValue(question, answer, units)]);
  }
  return stringify(Object.fromEntries(entries));
}

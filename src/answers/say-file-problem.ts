import type { Question } from '../flow/flow.ts';
import { explainReason } from '../quantities/index.ts';
import type { ReadingProblem } from './reading/reading.ts';

function allowedRange({ min, max }: Question): string {
  if (min !== undefined && max !== undefined) return `between ${min} and ${max}`;
  return min === undefined ? `at most ${max}` : `at least ${min}`;
}

/** Error text for a measure of an answer file that cannot be taken. */
export function sayFileProblem(text: string, problem: ReadingProblem, question: Question): string {
  const said = `"${text}" is no ${question.kind} that "${question.id}" can take`;
  switch (problem.code) {
    case 'outside':
      return `${said}: it must be ${allowedRange(question)}.`;
    case 'notAMeasure': {
      const { reason, detail } = problem;
      return `${said}: ${explainReason({ kind: 'notRead', reason, ...(detail === undefined ? {} : { detail }) })}.`;
    }
    default:
      return `${said}.`;
  }
}

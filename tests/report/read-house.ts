import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { AnswerSheet } from '../../src/answers/answer.ts';
import type { FlowIndex } from '../../src/answers/flow-index.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { sayProblem } from '../../src/flow/problem.ts';

/** The answers of one of the houses; throws with every problem or warning, since a house has neither. */
export function readHouse(index: FlowIndex, name: string): AnswerSheet {
  const path = join('tests/houses', `${name}.yaml`);
  const { sheet, warnings, problems } = readAnswers(index, path, readFileSync(resolve(path), 'utf8'));
  if (warnings.length + problems.length > 0)
    throw new Error([...problems, ...warnings].map(sayProblem).join('\n'));
  return sheet;
}

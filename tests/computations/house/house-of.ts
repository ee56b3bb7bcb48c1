import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { AnswerSheet } from '../../../src/answers/answer.ts';
import type { Spot } from '../../../src/answers/condition.ts';
import { layOutPath } from '../../../src/answers/path.ts';
import { type House, houseOf } from '../../../src/computations/house/house.ts';
import type { HouseOutcome } from '../../../src/computations/house/house-computation.ts';
import { outcomeAt } from '../../../src/computations/house/outcome.ts';
import { readAnswers } from '../../../src/files/read-answers.ts';
import { fromBase, type UnitId } from '../../../src/quantities/index.ts';
import { realProgramme } from '../../support/programme.ts';

/** The answers of a file's text, read as the headless walk reads them. */
export function sheetOf(yaml: string): AnswerSheet {
  const { index } = realProgramme().checklist;
  const read = readAnswers(index, 'house.yaml', yaml);
  if (read.problems.length > 0) throw new Error(JSON.stringify(read.problems, null, 1));
  return read.sheet;
}

/** The house of an answer file's text, with changes to single answers. */
export function house(yaml: string): House {
  const { index } = realProgramme().checklist;
  return houseOf(index, layOutPath(index, sheetOf(yaml)));
}

/** The text of a demo house's answer file. */
export const demoText = (name: string): string =>
  readFileSync(resolve('tests/houses', `${name}.yaml`), 'utf8');

/** The text of an answer file with some lines changed or added. */
export function changed(text: string, answers: Readonly<Record<string, string>>): string {
  return Object.entries(answers).reduce((now, [id, value]) => {
    const line = new RegExp(`^${id.replaceAll('.', '\\.')}:.*$`, 'm');
    return line.test(now) ? now.replace(line, `${id}: ${value}`) : `${now}${id}: ${value}\n`;
  }, text);
}

/** A result at a spot; anything else fails the test. */
export function resultAt(at: House, id: string, spot: Spot = {}): HouseOutcome & { kind: 'result' } {
  const outcome = outcomeAt(at, id, spot);
  if (outcome?.kind !== 'result') throw new Error(`${id}: ${JSON.stringify(outcome)}`);
  return outcome;
}

/** One value of a result in a unit. */
export const inUnit = (outcome: HouseOutcome & { kind: 'result' }, id: string, unit: UnitId): number =>
  fromBase(outcome.values.find((one) => one.id === id)?.value ?? Number.NaN, unit);

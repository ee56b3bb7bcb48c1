import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { AnswerSheet } from '../../src/answers/answer.ts';
import type { Checklist } from '../../src/assess/checklist.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { readPractice } from '../../src/files/read-practice.ts';
import { prepareHouseMaker } from '../../src/practice/house/house-maker.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';

/** Made-up houses, whole: the same seeds give the same houses. */
export function madeUpHouses(checklist: Checklist, firstSeed: number, count: number): AnswerSheet[] {
  const { content } = readPractice(resolve('flows/practice'), resolve('.'));
  if (!content) throw new Error('The practice files have faults.');
  const maker = prepareHouseMaker(checklist, content.house);
  return Array.from({ length: count }, (_, at) => makeHouse(maker, firstSeed + at, 'ordinary').sheet);
}

/** The houses of the demonstrations. */
export function demoHouses(checklist: Checklist): { readonly name: string; readonly sheet: AnswerSheet }[] {
  const folder = resolve('tests/houses');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => {
      const { sheet, problems } = readAnswers(
        checklist.index,
        name,
        readFileSync(join(folder, name), 'utf8'),
      );
      if (problems.length > 0) throw new Error(`${name} has ${problems.length} faults.`);
      return { name, sheet };
    });
}

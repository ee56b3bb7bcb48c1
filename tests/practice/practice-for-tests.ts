import { resolve } from 'node:path';
import { readPractice } from '../../src/files/read-practice.ts';
import { buildPractice, type Practice } from '../../src/practice/practice.ts';
import { practiceTexts } from '../../src/practice/practice-texts.ts';
import { knownHouse } from '../../src/practice/session/known.ts';
import type { PracticeState } from '../../src/practice/session/state.ts';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import { createWording, type Wording } from '../../src/wording/wording.ts';
import { realProgramme } from '../support/programme.ts';

let practice: Practice | undefined;

/** The practice of the real flow and practice files, built once for a test file. */
export function realPractice(): Practice {
  if (practice) return practice;
  const read = readPractice(resolve('flows/practice'), resolve('.'));
  if (!read.content) throw new Error(JSON.stringify(read.problems, null, 2));
  practice = buildPractice(realProgramme(), read.content);
  return practice;
}

/** The words a trainee reads, with the limits of the house's place. */
export function wordingOf(state: Pick<PracticeState, 'house'>): Wording {
  const { programme, content } = realPractice();
  const { flow, index } = programme.checklist;
  const catalogue = new Map([...catalogueOf(flow), ...practiceTexts(content)]);
  const { limits } = knownHouse(realPractice(), state as PracticeState).assessment.path;
  return createWording(
    { catalogue, questions: index.questions },
    { language: 'en', audience: 'trainee', units: 'imperial', limits },
  );
}

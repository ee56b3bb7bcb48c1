import { join } from 'node:path';
import type { AnswerSheet } from '../../answers/answer.ts';
import { pathOf } from '../../answers/path.ts';
import { COMPUTED_IDS } from '../../computations/house/computed-ids.ts';
import { unitsOf } from '../../conversation/units.ts';
import { readCheckedPractice } from '../../files/read-practice.ts';
import { sayProblem } from '../../flow/problem.ts';
import { buildPractice, type Practice } from '../../practice/practice.ts';
import { practiceTexts } from '../../practice/practice-texts.ts';
import { folders } from '../../settings.ts';
import { catalogueOf } from '../../wording/catalogue.ts';
import { createWording, type Wording } from '../../wording/wording.ts';
import { loadProgramme } from '../load-programme.ts';
import { ProgramError } from '../program-error.ts';

/** Loads the flow and the practice files; a fault is named with file, line and column. */
export async function loadPractice(): Promise<Practice> {
  const programme = await loadProgramme();
  const { flow } = programme.checklist;
  const read = readCheckedPractice(join(folders.flows, 'practice'), folders.root, flow, COMPUTED_IDS);
  if (read.content) return buildPractice(programme, read.content);
  throw new ProgramError(
    `${read.problems.map(sayProblem).join('\n')}\nThe practice files have faults: mend the lines above, then run "roofdown check-flows".`,
  );
}

/** The wording for a trainee, with the limits of the house's place; practice texts stand beside those of the flow. */
export function practiceWording(practice: Practice, sheet: AnswerSheet): Wording {
  const { checklist } = practice.programme;
  const catalogue = new Map([...catalogueOf(checklist.flow), ...practiceTexts(practice.content)]);
  return createWording(
    { catalogue, questions: checklist.index.questions },
    {
      language: checklist.flow.walk.language,
      audience: 'trainee',
      units: unitsOf(checklist, sheet),
      limits: pathOf(checklist.index, sheet).limits,
    },
  );
}

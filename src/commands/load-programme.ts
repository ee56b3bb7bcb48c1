import { COMPUTED_IDS } from '../computations/house/computed-ids.ts';
import { buildProgramme, type Programme } from '../conversation/programme.ts';
import { loadFlow } from '../files/load-flow.ts';
import { sayProblem } from '../flow/problem.ts';
import { folders } from '../settings.ts';
import { ProgramError } from './program-error.ts';

/** Loads the checked flow and builds the programme; flow files with a fault are named with file, line and column. */
export async function loadProgramme(): Promise<Programme> {
  const loaded = await loadFlow(folders, COMPUTED_IDS);
  if (loaded.flow) return buildProgramme(loaded.flow);
  const list = loaded.problems.map(sayProblem).join('\n');
  throw new ProgramError(
    `${list}\nThe flow files have faults: mend the lines above, then run "roofdown check-flows".`,
  );
}

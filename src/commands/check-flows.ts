import { COMPUTED_IDS } from '../computations/house/computed-ids.ts';
import { checkFlowFiles } from '../files/load-flow.ts';
import { sayProblem } from '../flow/problem.ts';
import { folders } from '../settings.ts';
import { write } from './io.ts';
import { ProgramError } from './program-error.ts';
import type { Register } from './register.ts';

/** `check-flows`: reads every flow file afresh and says all that is wrong with it. */
export const registerCheckFlows: Register = (program, io) => {
  program
    .command('check-flows')
    .description('check the flow files: every fault with file, line, column and what to do')
    .argument('[folder]', 'a folder of flow files, instead of the ones that come with the program')
    .addHelpText('after', '\nExample:\n  roofdown check-flows\n')
    .action(async (folder: string | undefined) => {
      const place = folder === undefined ? folders : { root: process.cwd(), flows: folder };
      const loaded = await checkFlowFiles(place, COMPUTED_IDS);
      if (!loaded.flow) {
        const lines = loaded.problems.map(sayProblem);
        throw new ProgramError(`${lines.join('\n')}\n${lines.length} faults in the flow files.`);
      }
      const { questions, findings, waysIn, actions, rulebooks, sources } = loaded.flow;
      const counts = `${questions.length} questions, ${findings.length} findings, ${waysIn.length} ways in, ${actions.length} actions, ${rulebooks.length} rulebooks, ${sources.length} sources`;
      await write(io.stdout, `The flow files are sound: ${counts}.\n`);
    });
};

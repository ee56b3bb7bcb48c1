import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { COMPUTED_IDS } from '../computations/house/computed-ids.ts';
import { checkFlowFiles, type FlowFolders } from '../files/load-flow.ts';
import { type ReadPractice, readCheckedPractice, readPractice } from '../files/read-practice.ts';
import type { Flow } from '../flow/flow.ts';
import { type FlowProblem, sayProblem } from '../flow/problem.ts';
import { folders } from '../settings.ts';
import { write } from './io.ts';
import { ProgramError } from './program-error.ts';
import type { Register } from './register.ts';

type Place = Omit<FlowFolders, 'built'>;

/** Without a sound flow only the shape of the practice files can be checked; a folder of one's own may have none. */
function checkPracticeFiles(place: Place, flow: Flow | undefined): ReadPractice | undefined {
  const folder = join(place.flows, 'practice');
  if (place !== folders && !existsSync(folder)) return undefined;
  return flow
    ? readCheckedPractice(folder, place.root, flow, COMPUTED_IDS)
    : readPractice(folder, place.root);
}

function sayFaults(problems: readonly FlowProblem[]): string {
  const count = problems.length === 1 ? 'One fault' : `${problems.length} faults`;
  return `${problems.map(sayProblem).join('\n')}\n${count} in the flow files.`;
}

function sayCounts(flow: Flow, practice: ReadPractice | undefined): string {
  const { questions, findings, waysIn, actions, rulebooks, sources } = flow;
  const counts = `${questions.length} questions, ${findings.length} findings, ${waysIn.length} ways in, ${actions.length} actions, ${rulebooks.length} rulebooks, ${sources.length} sources`;
  const { cards, phrases } = practice?.content ?? {};
  const practised =
    cards && phrases
      ? `The practice files are sound: ${cards.length} fact cards, ${Object.keys(phrases).length} phrases.\n`
      : '';
  return `The flow files are sound: ${counts}.\n${practised}`;
}

/** `check-flows`: reads every flow and practice file afresh and says all that is wrong with them. */
export const registerCheckFlows: Register = (program, io) => {
  program
    .command('check-flows')
    .description('check the flow and practice files: every fault with file, line, column and what to do')
    .argument('[folder]', 'a folder of flow files, instead of the ones that come with the program')
    .addHelpText('after', '\nExample:\n  roofdown check-flows\n')
    .action(async (folder: string | undefined) => {
      const place: Place = folder === undefined ? folders : { root: process.cwd(), flows: folder };
      const loaded = await checkFlowFiles(place, COMPUTED_IDS);
      const practice = checkPracticeFiles(place, loaded.flow);
      const problems = [
        ...(loaded.flow ? [] : loaded.problems),
        ...(practice && !practice.content ? practice.problems : []),
      ];
      if (!loaded.flow || problems.length > 0) throw new ProgramError(sayFaults(problems));
      await write(io.stdout, sayCounts(loaded.flow, practice));
    });
};

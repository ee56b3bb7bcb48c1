import { drawMachine } from '../machine/picture.ts';
import { write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import type { Register } from './register.ts';
import { wordingFor } from './wording-for.ts';

/** `picture`: the machine of the walk as a Mermaid state diagram. */
export const registerPicture: Register = (program, io) => {
  program
    .command('picture')
    .description('print the machine of the walk as a Mermaid state diagram')
    .addHelpText('after', '\nExample:\n  roofdown picture > walk.mmd\n')
    .action(async () => {
      const { machine, checklist } = await loadProgramme();
      const reader = { sheet: {}, language: 'en', audience: 'resident' } as const;
      const wording = wordingFor(checklist, reader);
      const titles = checklist.flow.stops.map(({ id }) => [id, wording.text(`stop/${id}/title`)] as const);
      await write(io.stdout, drawMachine(machine, new Map(titles)));
    });
};

import { unitsOf } from '../../conversation/units.ts';
import { changeAnswers } from '../../files/change-answers.ts';
import { sayProblem } from '../../flow/problem.ts';
import { toldToLeave, toldToLeaveFirst } from '../headless.ts';
import { type CommandIo, write } from '../io.ts';
import { loadProgramme } from '../load-programme.ts';
import { ProgramError } from '../program-error.ts';
import { readFormat } from '../read-format.ts';
import { loadHouse } from './house.ts';
import { jobsOfHouse } from './jobs-of-house.ts';
import { tellStates } from './tell-states.ts';

export interface WhatIfOptions {
  readonly done: string[];
  readonly set: string[];
  readonly format: string;
}

/** Supposes jobs done or answers other, and writes what that changes; the walk is only read. */
export async function runWhatIf(
  io: CommandIo,
  house: string | undefined,
  options: WhatIfOptions,
): Promise<number> {
  const format = readFormat(options.format);
  if (options.done.length + options.set.length === 0)
    throw new ProgramError(
      'Suppose something: --done with jobs, or --set with an answer. See "roofdown what-if --help".',
    );
  const programme = await loadProgramme();
  const { checklist } = programme;
  const record = await loadHouse(io, programme, house);
  if (await toldToLeaveFirst(io, programme, record)) return toldToLeave;
  const units = unitsOf(checklist, record.sheet, record.units);
  const changed =
    options.set.length > 0
      ? changeAnswers(checklist, record.sheet, options.set, units)
      : { sheet: record.sheet, problems: [], warnings: [] };
  if (changed.problems.length > 0) throw new ProgramError(changed.problems.map(sayProblem).join('\n'));
  const before = (record.done ?? []).map((one) => one.action);
  const supposed = jobsOfHouse(checklist, changed.sheet, before, options.done);
  const text = tellStates(
    checklist,
    [
      { sheet: record.sheet, done: before },
      { sheet: changed.sheet, done: [...before, ...supposed] },
    ],
    { title: 'compare.what-if.title', done: [] },
    { reader: record, date: io.clock(), format, width: io.stdout.columns ?? 80 },
  );
  await write(io.stdout, text);
  return 0;
}

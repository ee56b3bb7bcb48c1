import type { WalkRecord } from '../../conversation/record.ts';
import { toldToLeave, toldToLeaveFirst } from '../headless.ts';
import { type CommandIo, write } from '../io.ts';
import { loadProgramme } from '../load-programme.ts';
import { readFormat } from '../read-format.ts';
import { loadHouse } from './house.ts';
import { type Standing, tellStates } from './tell-states.ts';

/** A walk as it stands now. */
function standing({ sheet, done = [] }: WalkRecord): Standing {
  return { sheet, done: done.map((one) => one.action) };
}

/** A walk as it was before anything was marked as done. */
function atFirst({ sheet, earlier = [] }: WalkRecord): Standing {
  return { sheet: earlier[0]?.sheet ?? sheet, done: [] };
}

/** Writes two states of a house side by side. */
export async function runCompare(
  io: CommandIo,
  [first, second]: readonly [string | undefined, string | undefined],
  options: { readonly format: string },
): Promise<number> {
  const format = readFormat(options.format);
  const programme = await loadProgramme();
  const one = await loadHouse(io, programme, first);
  const other = second === undefined ? one : await loadHouse(io, programme, second);
  for (const record of [one, other]) {
    if (await toldToLeaveFirst(io, programme, record)) return toldToLeave;
  }
  const text = tellStates(
    programme.checklist,
    [second === undefined ? atFirst(one) : standing(one), standing(other)],
    { title: 'compare.title', done: other.done ?? [] },
    { reader: other, date: io.clock(), format, width: io.stdout.columns ?? 80 },
  );
  await write(io.stdout, text);
  return 0;
}

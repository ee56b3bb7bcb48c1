import { markDone, unmarkDone } from '../../conversation/mark-done.ts';
import type { WalkRecord } from '../../conversation/record.ts';
import { type CommandIo, write } from '../io.ts';
import { loadProgramme } from '../load-programme.ts';
import { ProgramError } from '../program-error.ts';
import { readFormat } from '../read-format.ts';
import { loadWalk, withStore } from './house.ts';
import { jobsOfHouse } from './jobs-of-house.ts';
import { tellStates } from './tell-states.ts';

export interface DoneOptions {
  readonly walk?: string;
  readonly date?: string;
  readonly undo?: boolean;
  readonly format: string;
}

function dayOf(typed: string | undefined, now: Date): string {
  if (typed === undefined) return now.toISOString().slice(0, 10);
  const day = /^\d{4}-\d{2}-\d{2}$/.test(typed) ? new Date(`${typed}T00:00:00Z`) : undefined;
  if (!day || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== typed)
    throw new ProgramError(`--date ${typed} is not a day. Write it as 2026-06-12.`);
  return typed;
}

const doneIn = (record: WalkRecord) => (record.done ?? []).map((one) => one.action);

/** The marks to take back by what was typed: a whole id, or an action at all its places. */
function marksNamed(record: WalkRecord, names: readonly string[]): string[] {
  const marked = doneIn(record);
  const missing = names.filter((name) => !marked.some((id) => id === name || id.split('@')[0] === name));
  if (missing.length > 0) {
    throw new ProgramError(
      `Not marked as done: ${missing.join(', ')}. Marked are: ${marked.length > 0 ? marked.join(', ') : 'none'}.`,
    );
  }
  return marked.filter((id) => names.some((name) => id === name || id.split('@')[0] === name));
}

/** Marks jobs of a kept walk as done, or takes the marks back, and writes what that changed. */
export async function runDone(io: CommandIo, jobs: readonly string[], options: DoneOptions): Promise<void> {
  const format = readFormat(options.format);
  const now = io.clock();
  const day = dayOf(options.date, now);
  const programme = await loadProgramme();
  const { checklist } = programme;
  await withStore(io, programme, async (store) => {
    const record = await loadWalk(store, options.walk);
    const next = options.undo
      ? unmarkDone(record, marksNamed(record, jobs), now)
      : markDone(record, jobsOfHouse(checklist, record.sheet, doneIn(record), jobs), day, now);
    if (next !== record && (await store.commit({ record: next, expected: record.revision })) !== 'saved')
      throw new ProgramError('The walk was changed at the same time: try again.', 1);
    const text = tellStates(
      checklist,
      [
        { sheet: record.sheet, done: doneIn(record) },
        { sheet: next.sheet, done: doneIn(next) },
      ],
      { title: 'compare.title', done: next.done ?? [] },
      { reader: next, date: now, format, width: io.stdout.columns ?? 80 },
    );
    await write(io.stdout, text);
  });
}

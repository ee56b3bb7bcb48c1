import { readFileSync } from 'node:fs';
import { pathOf } from '../answers/path.ts';
import { leaveParts } from '../conversation/emergency.ts';
import { newWalk } from '../conversation/new-walk.ts';
import type { Programme } from '../conversation/programme.ts';
import type { WalkId, WalkRecord } from '../conversation/record.ts';
import { readAnswers } from '../files/read-answers.ts';
import { sayProblem } from '../flow/problem.ts';
import { wordReply } from '../wording/word-reply.ts';
import { type CommandIo, write } from './io.ts';
import { loadProgramme } from './load-programme.ts';
import { makeReport } from './make-report.ts';
import { type BudgetOptions, limitsOf } from './planning/budget-options.ts';
import { withOwnPrices } from './planning/own-prices.ts';
import { ProgramError } from './program-error.ts';
import { readFormat } from './read-format.ts';
import { type ReaderOptions, readerOf } from './reader-options.ts';
import { wordingFor } from './wording-for.ts';

/** The exit code after an order to leave. */
export const toldToLeave = 3;

/** The text of an answer file; `-` is standard input. */
export async function readAnswerText(io: CommandIo, path: string): Promise<string> {
  try {
    if (path !== '-') return readFileSync(path, 'utf8');
    const chunks: Buffer[] = [];
    for await (const chunk of io.stdin) chunks.push(Buffer.from(chunk));
    return Buffer.concat(chunks).toString('utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new ProgramError(
      `The answer file cannot be read: ${reason}. Give the path of a YAML or JSON file.`,
    );
  }
}

/** The answers say that there is danger now: nothing but the order to leave is said, with exit code 3. */
export async function toldToLeaveFirst(
  io: CommandIo,
  programme: Programme,
  record: WalkRecord,
): Promise<boolean> {
  if (!saysDanger(programme, record)) return false;
  const parts = leaveParts(programme, record).slice(0, 2);
  const worded = wordReply({ parts }, wordingFor(programme.checklist, record));
  await write(io.stdout, `${worded.blocks.flatMap((block) => block.lines).join('\n')}\n`);
  return true;
}

function saysDanger(programme: Programme, record: WalkRecord): boolean {
  const { index } = programme.checklist;
  const danger = index.roles.get('danger');
  const answer =
    danger && pathOf(index, record.sheet).byKey.has(danger.id) ? record.sheet[danger.id] : undefined;
  return answer?.status === 'given' && answer.value === 'yes';
}

/** Reads an answer file into a walk that is kept nowhere; faults end with exit 2, nothing written. */
export async function walkFromFile(
  io: CommandIo,
  programme: Programme,
  path: string,
  options: ReaderOptions,
): Promise<WalkRecord> {
  const reader = readerOf(options);
  const read = readAnswers(programme.checklist.index, path, await readAnswerText(io, path), reader.units);
  if (read.problems.length > 0) {
    throw new ProgramError(
      `${read.problems.map(sayProblem).join('\n')}\nNothing was made: mend the answer file and try again.`,
    );
  }
  await write(io.stderr, read.warnings.map((one) => `${sayProblem(one)}\n`).join(''));
  const walk = newWalk(programme, 'file' as WalkId, io.clock(), reader);
  return { ...walk, sheet: read.sheet, cursor: { phase: 'finished' } };
}

/** `walk --answers`: file in, report out; returns the exit code. */
export async function runHeadless(
  io: CommandIo,
  options: ReaderOptions & BudgetOptions & { answers: string; format?: string },
): Promise<number> {
  const format = readFormat(options.format);
  const limits = limitsOf(options);
  const programme = await loadProgramme();
  const checklist = withOwnPrices(programme.checklist, options);
  const record = await walkFromFile(io, programme, options.answers, options);
  if (await toldToLeaveFirst(io, programme, record)) return toldToLeave;
  const report = makeReport(checklist, { ...record, id: null }, io.clock(), format, {
    width: io.stdout.columns ?? 80,
    limits,
  });
  await write(io.stdout, report.endsWith('\n') ? report : `${report}\n`);
  return 0;
}

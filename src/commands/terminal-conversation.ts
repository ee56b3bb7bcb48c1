import type { Checklist } from '../assess/checklist.ts';
import type { Message } from '../conversation/message.ts';
import type { newWalk } from '../conversation/new-walk.ts';
import type { WalkId, WalkRecord } from '../conversation/record.ts';
import { handleMessage, type KeptTurn, type Shell } from '../conversation/shell.ts';
import type { CallOnScreen, TerminalConversation, Turn } from '../terminal/ports.ts';
import { wordReply } from '../wording/word-reply.ts';
import { wordingFor } from './wording-for.ts';

/** What the screen shows of a guided call. */
function callOnScreen({ flow }: Checklist, { call }: WalkRecord): CallOnScreen | undefined {
  const [stopKey] = flow.call?.words.stopLine ?? [];
  if (!call || stopKey === undefined) return undefined;
  const { since, minutes } = call;
  return { since, stopKey, ...(minutes === undefined ? {} : { minutes }) };
}

/** The list at the end of a walk, or what a volunteer takes from a call. Loaded when it is wanted: no question waits for it. */
async function pageOf({ programme, clock }: Shell, record: WalkRecord, width: number): Promise<string> {
  const { makeReport, reportOf } = await import('./make-report.ts');
  if (!record.call)
    return makeReport(programme.checklist, record, clock(), 'text', { width, extent: 'screen' });
  const { callPage } = await import('../report/call-page.ts');
  const { report, wording } = reportOf(programme.checklist, record, clock());
  return callPage(report, wording, width);
}

/** Words a kept turn for the terminal; the report is made only where the reply has a place for it. */
async function toTurn(shell: Shell, { record, reply }: KeptTurn, width: () => number): Promise<Turn> {
  const { checklist } = shell.programme;
  const worded = wordReply(reply, wordingFor(checklist, record));
  const stop = reply.progress.stop;
  const call = callOnScreen(checklist, record);
  const drawing = checklist.flow.stops.find((one) => one.id === stop)?.drawing;
  const wantsReport = reply.parts.some((part) => part.kind === 'report');
  const report = wantsReport ? await pageOf(shell, record, width()) : undefined;
  return {
    worded,
    phase: reply.phase,
    progress: reply.progress,
    revision: reply.revision,
    ...(reply.ask ? { ask: reply.ask } : {}),
    ...(drawing ? { drawing } : {}),
    ...(call ? { call } : {}),
    ...(report === undefined ? {} : { report }),
  };
}

/** A walk as the terminal sees it: every turn is kept before it is shown. */
export function terminalConversation(
  shell: Shell,
  id: WalkId,
  width: () => number,
  reader: NonNullable<Parameters<typeof newWalk>[3]>,
): TerminalConversation {
  const turn = async (message: Message) =>
    toTurn(shell, await handleMessage(shell, id, message, { reader }), width);
  return { hello: () => turn({ kind: 'hello' }), send: turn };
}

import type { AnswerSheet } from '../../src/answers/answer.ts';
import { kindsWith } from '../../src/conversation/answer-kinds.ts';
import type { Message } from '../../src/conversation/message.ts';
import { newWalk } from '../../src/conversation/new-walk.ts';
import type { Programme } from '../../src/conversation/programme.ts';
import type { WalkId, WalkRecord } from '../../src/conversation/record.ts';
import { takeTurn } from '../../src/conversation/turn.ts';

export const day = new Date('2026-06-12T16:00:00Z');

/** A walk with these answers, at a question of the path or wherever it then stands. */
export function walkWith(programme: Programme, sheet: AnswerSheet = {}, key?: string): WalkRecord {
  const { index } = programme.checklist;
  const fresh = newWalk(programme, 'walk-1' as WalkId, day);
  const questions = Object.keys(sheet).flatMap(
    (one) => index.questions.get(one.split('/').at(-1) ?? '') ?? [],
  );
  const record: WalkRecord = {
    ...fresh,
    sheet,
    kinds: questions.reduce((kinds, question) => kindsWith(kinds, question), {}),
    revision: key === undefined ? 0 : 1,
    cursor: key === undefined ? { phase: 'asking' } : { phase: 'asking', key },
  };
  return key === undefined ? takeTurn(programme, record, { kind: 'hello' }, day).record : record;
}

const asMessage = (said: string | Message): Message =>
  typeof said === 'string' ? { kind: 'text', text: said } : said;

/** Turn after turn; the last record and reply. */
export function talk(programme: Programme, record: WalkRecord, ...said: (string | Message)[]) {
  let last = takeTurn(programme, record, asMessage(said[0] ?? { kind: 'hello' }), day);
  for (const one of said.slice(1)) last = takeTurn(programme, last.record, asMessage(one), day);
  return last;
}

/** The ids of what a reply says. */
export function saidIn(reply: ReturnType<typeof takeTurn>['reply']): string[] {
  return reply.parts.map((part) => (part.kind === 'say' ? part.text : part.kind));
}

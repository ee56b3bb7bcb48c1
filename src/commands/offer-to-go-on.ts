import { randomUUID } from 'node:crypto';
import { newWalk } from '../conversation/new-walk.ts';
import type { WalkSummary } from '../conversation/ports.ts';
import { progressOf } from '../conversation/progress.ts';
import { readFor } from '../conversation/read.ts';
import { readYesNo } from '../conversation/read-yes-no.ts';
import type { WalkId } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { TerminalConversation, Turn } from '../terminal/ports.ts';
import type { Value } from '../wording/say.ts';
import { wordingFor } from './wording-for.ts';

/** A new unguessable name for a walk. */
export const newWalkId = () => randomUUID() as WalkId;

/**
 * Before anything else, a person with an unfinished walk is asked whether to go on with it.
 * `open` gives the conversation of a walk; after the answer it takes over for good.
 */
export function offerToGoOn(
  shell: Shell,
  kept: WalkSummary,
  open: (id: WalkId) => TerminalConversation,
): TerminalConversation {
  const { checklist } = shell.programme;
  const blank = newWalk(shell.programme, kept.id, shell.clock());
  const wording = wordingFor(checklist, blank);
  let chosen: TerminalConversation | undefined;
  const name: Value = kept.label ?? { text: 'terminal.a-house' };
  const values = { name, answered: kept.answered, date: kept.updatedAt.slice(0, 10) };
  const yesNo = (['yes', 'no'] as const).map((id, position) => ({
    id,
    number: position + 1,
    letter: 'ab'[position] ?? '',
    label: wording.text(`terminal.go-on.${id}`),
  }));
  const question = (lines: string[]): Turn => ({
    worded: {
      blocks: lines.map((line) => ({ kind: 'say', tone: 'plain', lines: [line] })),
      ask: {
        question: wording.text('terminal.go-on', values),
        choices: yesNo,
        several: false,
        hint: wording.text('hint.yesNo'),
      },
    },
    phase: 'asking',
    progress: progressOf(checklist, blank),
    revision: 0,
    ask: {
      key: 'go-on',
      question: 'go-on',
      kind: 'yesNo',
      say: { text: 'terminal.go-on', values },
      choices: yesNo.map(({ label: _, ...choice }) => ({
        ...choice,
        label: { text: `terminal.go-on.${choice.id}` },
      })),
      several: false,
      sides: [],
      hint: { text: 'hint.yesNo' },
    },
  });
  const take = (id: WalkId) => {
    chosen = open(id);
    return chosen;
  };
  return {
    hello: async () => question([]),
    send: async (message) => {
      if (chosen) return chosen.send(message);
      const said = message.kind === 'text' ? message.text : message.kind === 'choose' ? message.option : '';
      const emergency =
        message.kind === 'emergency' || readFor(checklist, blank, undefined, said).kind === 'emergency';
      if (emergency) return take(kept.id).send(message);
      const answer =
        said === '1' || said === 'a'
          ? 'yes'
          : said === '2' || said === 'b'
            ? 'no'
            : readYesNo(checklist, blank, said);
      if (answer === 'yes') return take(kept.id).hello();
      if (answer === 'no') return take(newWalkId()).hello();
      return question([wording.text('terminal.go-on.which')]);
    },
  };
}

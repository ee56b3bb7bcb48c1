import { randomUUID } from 'node:crypto';
import { newWalk } from '../conversation/new-walk.ts';
import type { WalkSummary } from '../conversation/ports.ts';
import { progressOf } from '../conversation/progress.ts';
import { readFor } from '../conversation/read.ts';
import { readYesNo } from '../conversation/read-yes-no.ts';
import type { WalkId, WalkRecord } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { TerminalConversation, Turn } from '../terminal/ports.ts';
import type { Value } from '../wording/say.ts';
import type { CommandIo } from './io.ts';
import { wordingFor } from './wording-for.ts';

/** A new name for a walk, unguessable unless the caller makes its own. */
export const newWalkId = (io: Pick<CommandIo, 'newId'>) => (io.newId ?? randomUUID)() as WalkId;

const choices = (['yes', 'no'] as const).map((id, position) => ({
  id,
  number: position + 1,
  letter: 'ab'[position] ?? '',
  label: { text: `terminal.go-on.${id}` },
}));

/** The short question, as a turn of the terminal. */
function questionTurn(shell: Shell, kept: WalkSummary, blank: WalkRecord, before: readonly string[]): Turn {
  const { checklist } = shell.programme;
  const wording = wordingFor(checklist, blank);
  const name: Value = kept.label ?? { text: 'terminal.a-house' };
  const say = {
    text: 'terminal.go-on',
    values: { name, answered: kept.answered, date: kept.updatedAt.slice(0, 10) },
  };
  const hint = { text: 'hint.yesNo' };
  const worded = choices.map((choice) => ({ ...choice, label: wording.text(choice.label.text) }));
  return {
    worded: {
      blocks: before.map((id) => ({ kind: 'say', tone: 'plain', lines: [wording.text(id)] })),
      ask: {
        question: wording.text(say.text, say.values),
        choices: worded,
        several: false,
        hint: wording.text(hint.text),
      },
    },
    phase: 'asking',
    progress: progressOf(checklist, blank),
    revision: 0,
    ask: { key: 'go-on', question: 'go-on', kind: 'yesNo', say, choices, several: false, sides: [], hint },
  };
}

/**
 * Before anything else, a person with an unfinished walk is asked whether to go on with it.
 * `open` gives the conversation of a walk; after the answer it takes over for good.
 */
export function offerToGoOn(
  shell: Shell,
  io: Pick<CommandIo, 'newId'>,
  kept: WalkSummary,
  open: (id: WalkId) => TerminalConversation,
): TerminalConversation {
  const { checklist } = shell.programme;
  const blank = newWalk(shell.programme, kept.id, shell.clock());
  const question = (...before: string[]) => questionTurn(shell, kept, blank, before);
  let chosen: TerminalConversation | undefined;
  const take = (id: WalkId) => {
    chosen = open(id);
    return chosen;
  };
  return {
    hello: async () => question(),
    send: async (message) => {
      if (chosen) return chosen.send(message);
      const said = message.kind === 'text' ? message.text : message.kind === 'choose' ? message.option : '';
      const emergency =
        message.kind === 'emergency' || readFor(checklist, blank, undefined, said).kind === 'emergency';
      if (emergency) return take(kept.id).send(message);
      const picked = choices.find(
        (one) => said === String(one.number) || said === one.letter || said === one.id,
      );
      const answer = picked?.id ?? readYesNo(checklist, blank, said);
      if (answer === 'yes') return take(kept.id).hello();
      if (answer === 'no') return take(newWalkId(io)).hello();
      return question('terminal.go-on.which');
    },
  };
}

import type { Message } from '../../conversation/message.ts';
import type { Turn } from '../ports.ts';
import { stripToLine } from '../strip-control.ts';
import { type Edit, type Editor, edit, editorText, emptyEditor } from './editor.ts';
import type { DraftCommand } from './keys.ts';

/** An answer in the making: what is typed, and what is picked from the list. */
export interface Draft {
  readonly editor: Editor;
  /** Position in the list of choices, when the arrow keys were used. */
  readonly pointed: number | undefined;
  /** Positions that are marked, where several may be. */
  readonly marked: readonly number[];
  /** What of a guided call is shown: the choices, or a page of what to listen for. */
  readonly page: number;
}

export const emptyDraft: Draft = { editor: emptyEditor, pointed: undefined, marked: [], page: 0 };

/** Rows by which the page keys move. */
const pageSize = 5;

/** The draft after a key, for the question of `turn`. */
export function changeDraft(draft: Draft, turn: Turn, command: DraftCommand): Draft {
  const choices = turn.worded.ask?.choices.length ?? 0;
  switch (command.kind) {
    case 'up':
      return point(draft, choices, -1);
    case 'down':
      return point(draft, choices, 1);
    case 'pageUp':
      return point(draft, choices, -pageSize);
    case 'pageDown':
      return point(draft, choices, pageSize);
    case 'nextPage':
      return { ...draft, page: draft.page + 1 };
    case 'escape':
      return emptyDraft;
    default:
      return type(draft, turn, command);
  }
}

function point(draft: Draft, choices: number, step: number): Draft {
  if (choices === 0) return draft;
  const from = draft.pointed ?? (step > 0 ? -1 : choices);
  return { ...draft, pointed: Math.max(0, Math.min(choices - 1, from + step)) };
}

function type(draft: Draft, turn: Turn, change: Edit): Draft {
  const { pointed } = draft;
  const toMark =
    change.kind === 'insert' &&
    change.text === ' ' &&
    turn.worded.ask?.several &&
    editorText(draft.editor) === '';
  if (!toMark || pointed === undefined) return { ...draft, editor: edit(draft.editor, change) };
  const marked = draft.marked.includes(pointed)
    ? draft.marked.filter((one) => one !== pointed)
    : [...draft.marked, pointed].sort((a, b) => a - b);
  return { ...draft, marked };
}

/** A draft that can be sent, with the words that stand for it in the history. */
export interface Finished {
  readonly message: Message;
  readonly said: string;
}

/** The line to read out takes one key, while nothing is typed. */
export function stopLine(draft: Draft, turn: Turn, command: DraftCommand): Finished | undefined {
  const key = turn.call?.stopKey;
  const pressed = command.kind === 'insert' && command.text === key && editorText(draft.editor) === '';
  return key !== undefined && pressed ? { message: { kind: 'text', text: key }, said: key } : undefined;
}

/** The message of a draft: what is typed goes before what is picked; nothing at all sends nothing. */
export function finishDraft(draft: Draft, turn: Turn): Finished | undefined {
  const typed = stripToLine(editorText(draft.editor)).trim();
  if (typed !== '') return { message: { kind: 'text', text: typed }, said: typed };
  const several = turn.worded.ask?.several ?? false;
  const positions = several && draft.marked.length > 0 ? draft.marked : [draft.pointed];
  const picked = positions.flatMap((position) => {
    const choice = position === undefined ? undefined : turn.worded.ask?.choices[position];
    return choice ? [choice] : [];
  });
  const [first] = picked;
  if (!first) return undefined;
  const said = picked.map((choice) => stripToLine(choice.label)).join('; ');
  if (several || !turn.ask) {
    return { message: { kind: 'text', text: picked.map((choice) => choice.number).join(', ') }, said };
  }
  return { message: { kind: 'choose', key: turn.ask.key, option: first.id, revision: turn.revision }, said };
}

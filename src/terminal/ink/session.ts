import type { Row } from '../lay-out-turn.ts';
import type { TerminalConversation, TerminalEnd, Turn } from '../ports.ts';
import { endOfTurn } from '../turn-end.ts';
import { changeDraft, type Draft, emptyDraft, type Finished, finishDraft, stopLine } from './draft.ts';
import type { Command } from './keys.ts';
import { type Room, saidRows, turnRows } from './turn-rows.ts';

/** What is on the screen now. Rows of the history are written once and never again. */
export interface SessionView {
  readonly history: readonly (readonly Row[])[];
  /** The turn that waits for an answer, with the answer so far; gone once the session has ended. */
  readonly live: { readonly turn: Turn; readonly draft: Draft } | undefined;
}

/** How a session ended; the last turn is still to be printed, unless the person left before it. */
export interface SessionEnd {
  readonly end: TerminalEnd;
  readonly lastTurn: Turn | undefined;
}

/** The state behind the interactive screen, without any drawing. */
export interface Session {
  readonly view: () => SessionView;
  readonly subscribe: (changed: () => void) => () => void;
  readonly press: (commands: readonly Command[]) => void;
  /** The person leaves; an answer that is on its way is still kept. */
  readonly interrupt: () => void;
  /** Rejects when a turn could not be kept. */
  readonly ended: Promise<SessionEnd>;
}

/** What changes during a session; only the functions of this file touch it. */
interface Cell {
  readonly conversation: TerminalConversation;
  readonly room: () => Room;
  readonly listeners: Set<() => void>;
  /** Keys pressed while an answer is on its way. */
  readonly waiting: Command[];
  readonly end: Deferred<SessionEnd>;
  view: SessionView;
  state: 'open' | 'sending' | 'leaving' | 'ended';
}

/** Begins with the conversation's first turn. `room`: what the screen has room for at this moment. */
export async function createSession(conversation: TerminalConversation, room: () => Room): Promise<Session> {
  const turn = await conversation.hello();
  const cell: Cell = {
    conversation,
    room,
    listeners: new Set(),
    waiting: [],
    end: deferred(),
    view: { history: [turnRows(turn, room())], live: { turn, draft: emptyDraft } },
    state: 'open',
  };
  return {
    view: () => cell.view,
    subscribe: (changed) => {
      cell.listeners.add(changed);
      return () => cell.listeners.delete(changed);
    },
    press: (commands) => {
      cell.waiting.push(...commands);
      workOff(cell);
      if (commands.some((command) => command.kind === 'interrupt')) interrupt(cell);
    },
    interrupt: () => interrupt(cell),
    ended: cell.end.promise,
  };
}

function show(cell: Cell, view: SessionView): void {
  cell.view = view;
  for (const listener of cell.listeners) listener();
}

function close(cell: Cell, settle: () => void): void {
  cell.state = 'ended';
  show(cell, { ...cell.view, live: undefined });
  settle();
}

function interrupt(cell: Cell): void {
  if (cell.state === 'open') close(cell, () => cell.end.resolve({ end: 'paused', lastTurn: undefined }));
  else if (cell.state === 'sending') cell.state = 'leaving';
}

/** Takes the waiting keys one by one, as long as there is a question to answer. */
function workOff(cell: Cell): void {
  while (cell.state === 'open' && cell.view.live) {
    const command = cell.waiting.shift();
    if (!command || command.kind === 'interrupt') return;
    const { turn, draft } = cell.view.live;
    const finished = command.kind === 'submit' ? finishDraft(draft, turn) : stopLine(draft, turn, command);
    if (finished) submit(cell, turn, finished);
    else if (command.kind === 'submit') continue;
    else show(cell, { ...cell.view, live: { turn, draft: changeDraft(draft, turn, command) } });
  }
}

function submit(cell: Cell, turn: Turn, finished: Finished): void {
  cell.state = 'sending';
  cell.conversation.send(finished.message).then(
    (next) => receive(cell, turn, finished.said, next),
    (error: unknown) => close(cell, () => cell.end.reject(error)),
  );
}

function receive(cell: Cell, before: Turn, said: string, turn: Turn): void {
  const room = cell.room();
  const { history } = cell.view;
  const end = endOfTurn(before, turn);
  if (end !== undefined) {
    cell.view = { ...cell.view, history: [...history, saidRows(said, room)] };
    close(cell, () => cell.end.resolve({ end, lastTurn: turn }));
    return;
  }
  const leaving = cell.state === 'leaving';
  cell.state = 'open';
  const rows = [...saidRows(said, room), ...turnRows(turn, room)];
  show(cell, { history: [...history, rows], live: { turn, draft: emptyDraft } });
  if (leaving) interrupt(cell);
  else workOff(cell);
}

interface Deferred<T> {
  readonly promise: Promise<T>;
  readonly resolve: (value: T) => void;
  readonly reject: (reason: unknown) => void;
}

function deferred<T>(): Deferred<T> {
  let resolve!: (value: T) => void;
  let reject!: (reason: unknown) => void;
  const promise = new Promise<T>((onResolve, onReject) => {
    resolve = onResolve;
    reject = onReject;
  });
  return { promise, resolve, reject };
}

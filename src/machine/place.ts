import { transition } from 'xstate';
import { type AnswerKey, type AnswerSheet, answerKey } from '../answers/answer.ts';
import type { FlowIndex } from '../answers/flow-index.ts';
import { isOpen, pathOf, type Step } from '../answers/path.ts';
import { stateOf, type WalkMachine } from './compile-machine.ts';
import type { WalkContext, WalkEvent } from './events.ts';

type Phase = 'asking' | 'readBack' | 'finished' | 'paused' | 'emergency';

/** Where a walk stands: the phase, the question asked, and the answers so far. */
export interface Position {
  readonly phase: Phase;
  readonly key: AnswerKey | undefined;
  readonly sheet: AnswerSheet;
}

type Snapshot = ReturnType<WalkMachine['resolveState']>;

/** The first question on the path that waits for an answer. */
export function firstOpen(index: FlowIndex, sheet: AnswerSheet): Step | undefined {
  return pathOf(index, sheet).steps.find((step) => isOpen(step, sheet));
}

/**
 * Puts a stored position onto the machine: a plain pass over the questions, no events replayed.
 * A question that is no longer on the path gives way to the first that waits.
 */
export function placeOnMachine(machine: WalkMachine, index: FlowIndex, position: Position): Snapshot {
  const { sheet, phase } = position;
  const path = pathOf(index, sheet);
  const stopped = phase === 'paused' || phase === 'emergency';
  const asked =
    (position.key === undefined ? undefined : path.byKey.get(position.key)) ?? firstOpen(index, sheet);
  const context: WalkContext = {
    index,
    sheet,
    member: asked?.member,
    again: asked && !stopped && !isOpen(asked, sheet) ? asked.key : undefined,
    stoppedAt: stopped ? position.key : undefined,
  };
  const value =
    phase === 'asking' && asked
      ? { asking: { [asked.question.stop]: stateOf(asked.question.id) } }
      : phase === 'asking'
        ? 'readBack'
        : phase;
  return machine.resolveState({ value, context } as never);
}

/** Reads the position back from a snapshot of the machine. */
export function positionOf(snapshot: Snapshot): Position {
  const { value } = snapshot as { value: unknown };
  const context = snapshot.context as unknown as WalkContext;
  if (typeof value === 'string') {
    const stopped = value === 'paused' || value === 'emergency';
    return { phase: value as Phase, key: stopped ? context.stoppedAt : undefined, sheet: context.sheet };
  }
  const stop = (value as { asking?: Record<string, string> }).asking ?? {};
  const [state] = Object.values(stop);
  const question = context.index.flow.questions.find((one) => stateOf(one.id) === state);
  const key =
    question && answerKey(question.id, question.of, question.of === undefined ? undefined : context.member);
  return { phase: 'asking', key, sheet: context.sheet };
}

/** One event, from a stored position to the next; nothing else is kept between events. */
export function stepWalk(
  machine: WalkMachine,
  index: FlowIndex,
  position: Position,
  event: WalkEvent,
): Position {
  const [next] = transition(machine, placeOnMachine(machine, index, position) as never, event as never);
  return positionOf(next as Snapshot);
}

/** Whether the walk as it stands takes an event: one that it does not take would change nothing, in silence. */
export function takesEvent(
  machine: WalkMachine,
  index: FlowIndex,
  position: Position,
  event: WalkEvent,
): boolean {
  return placeOnMachine(machine, index, position).can(event as never);
}

import { createActor } from 'xstate';
import { type AnswerKey, type AnswerSheet, answerKey } from '../answers/answer.ts';
import type { FlowIndex } from '../answers/flow-index.ts';
import { isOpen, pathOf, type Step } from '../answers/path.ts';
import type { Question } from '../flow/flow.ts';
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

const byState = new WeakMap<FlowIndex, ReadonlyMap<string, Question>>();

function questionsByState(index: FlowIndex): ReadonlyMap<string, Question> {
  const known = byState.get(index) ?? new Map(index.flow.questions.map((one) => [stateOf(one.id), one]));
  byState.set(index, known);
  return known;
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
  const question = questionsByState(context.index).get(state ?? '');
  const key =
    question && answerKey(question.id, question.of, question.of === undefined ? undefined : context.member);
  return { phase: 'asking', key, sheet: context.sheet };
}

type Scope = Parameters<WalkMachine['transition']>[2];
const scopes = new WeakMap<WalkMachine, Scope>();

const nothing = () => {};

/**
 * What the library wants beside a snapshot and an event. The machine starts and sends nothing, so one that does nothing
 * serves for all transitions; the library's own `transition` builds an actor with its first snapshot for each.
 */
function inertScope(machine: WalkMachine, index: FlowIndex): Scope {
  const known = scopes.get(machine);
  if (known) return known;
  const input: WalkContext = { index, sheet: {}, member: undefined, again: undefined, stoppedAt: undefined };
  const self = createActor(machine, { input } as never);
  const scope = {
    self,
    system: self.system,
    id: '',
    sessionId: '',
    logger: nothing,
    defer: nothing,
    emit: nothing,
    stopChild: nothing,
    actionExecutor: nothing,
  } as unknown as Scope;
  scopes.set(machine, scope);
  return scope;
}

/** One event, from a stored position to the next; nothing else is kept between events. */
export function stepWalk(
  machine: WalkMachine,
  index: FlowIndex,
  position: Position,
  event: WalkEvent,
): Position {
  const placed = placeOnMachine(machine, index, position);
  const next = machine.transition(placed as never, event as never, inertScope(machine, index));
  return positionOf(next as unknown as Snapshot);
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

import { assign, createMachine } from 'xstate';
import { answerKey } from '../answers/answer.ts';
import type { FlowIndex } from '../answers/flow-index.ts';
import { isOpen, pathOf } from '../answers/path.ts';
import type { Question } from '../flow/flow.ts';
import type { WalkContext, WalkEvent } from './events.ts';

interface At {
  readonly context: WalkContext;
  readonly event: WalkEvent;
}
interface Move {
  readonly target?: string;
  readonly guard?: (at: At) => boolean;
  readonly actions?: unknown;
}

/** The state in which a question is asked. */
export const stateOf = (questionId: string) => questionId.replaceAll(/[.-]/g, '_');
const idOf = (questionId: string) => `#${stateOf(questionId)}`;
const eachOf = (group: string) => `each_${group}`;

function keyAt(question: Question, context: WalkContext): string {
  return answerKey(question.id, question.of, context.member);
}

/** A question is asked while it is on the path and open, or asked again on purpose. */
function isNeeded(question: Question, context: WalkContext): boolean {
  const key = keyAt(question, context);
  const step = pathOf(context.index, context.sheet).byKey.get(key);
  return step !== undefined && (context.again === key || isOpen(step, context.sheet));
}

function isOpenAnywhere({ context }: At): boolean {
  return pathOf(context.index, context.sheet).steps.some((step) => isOpen(step, context.sheet));
}

/** The first member of a group with a question that waits, by its key. */
function openMember(group: string, context: WalkContext): string | undefined {
  const path = pathOf(context.index, context.sheet);
  return path.steps.find((step) => step.group === group && isOpen(step, context.sheet))?.member;
}

const keep = assign(({ context, event }: At) => {
  if (event.type !== 'ANSWER') return {};
  const sheet = { ...context.sheet, [event.key]: event.answer };
  return { sheet, again: context.again === event.key ? undefined : context.again };
});

const forgetAll = assign({ sheet: {}, member: undefined, again: undefined });

/** Going to a question: one guarded move for each, since the targets of a machine are fixed. */
function moves(index: FlowIndex, keyOf: (at: At) => string | undefined): Move[] {
  return index.flow.questions.map((question) => ({
    target: idOf(question.id),
    guard: (at) => questionOf(keyOf(at)) === question.id && isOnPath(at, keyOf(at)),
    actions: assign((at: At) => ({ again: keyOf(at), member: memberOf(keyOf(at)) })),
  }));
}

const questionOf = (key: string | undefined) => key?.split('/').at(-1);
const memberOf = (key: string | undefined) => (key?.includes('/') ? key.split('/')[1] : undefined);

function isOnPath({ context }: At, key: string | undefined): boolean {
  return key !== undefined && pathOf(context.index, context.sheet).byKey.has(key);
}

/** The states of one stop: its questions in order, and before the questions of a group the choice of the member. */
function statesOfStop(questions: readonly Question[], after: string): Record<string, object> {
  const states: Record<string, object> = {};
  questions.forEach((question, position) => {
    const next = questions[position + 1];
    const group = question.of;
    const startsGroup = group !== undefined && questions[position - 1]?.of !== group;
    if (startsGroup)
      states[eachOf(group)] = eachMember(group, question, afterGroup(questions, position, after));
    const leaves = group !== undefined && next?.of !== group;
    const target = leaves ? `#${eachOf(group)}` : next ? entryOf(next, question) : after;
    states[stateOf(question.id)] = {
      id: stateOf(question.id),
      always: { guard: ({ context }: At) => !isNeeded(question, context), target },
    };
  });
  return states;
}

/** Where a question is entered in the course of the walk: a group through the choice of its member. */
function entryOf(question: Question, from?: Question): string {
  return question.of === undefined || question.of === from?.of
    ? idOf(question.id)
    : `#${eachOf(question.of)}`;
}

function afterGroup(questions: readonly Question[], from: number, after: string): string {
  const next = questions.slice(from).find((one) => one.of !== questions[from]?.of);
  return next ? entryOf(next) : after;
}

function eachMember(group: string, first: Question, after: string): object {
  return {
    id: eachOf(group),
    always: [
      {
        guard: ({ context }: At) => openMember(group, context) !== undefined,
        target: idOf(first.id),
        actions: assign(({ context }: At) => ({ member: openMember(group, context) })),
      },
      { target: after, actions: assign({ member: undefined }) },
    ],
  };
}

function asking(index: FlowIndex): object {
  const stops = index.flow.stops.map((stop) => ({
    id: stop.id,
    questions: index.flow.questions.filter((one) => one.stop === stop.id),
  }));
  const states = stops.map(({ id, questions }, position) => {
    const next = stops[position + 1]?.questions[0];
    const inner = statesOfStop(questions, next ? entryOf(next) : '#end');
    return [id, { initial: Object.keys(inner)[0], states: inner }] as const;
  });
  const first = stops[0]?.questions[0];
  const end = {
    id: 'end',
    always: [
      { guard: isOpenAnywhere, target: first ? entryOf(first) : '#readBack' },
      { target: '#readBack' },
    ],
  };
  return { id: 'asking', initial: stops[0]?.id, states: { ...Object.fromEntries(states), end } };
}

/**
 * Compiles a flow into a machine of states, guards and assignments only: no timers, no calls, nothing that
 * could run twice. Answers are events; which question comes next is decided by the states in the order of the walk.
 */
export function compileMachine(index: FlowIndex) {
  const goOn = [...moves(index, ({ context }) => context.stoppedAt), { target: '#asking' }];
  const stop = (target: string) => ({
    target,
    actions: assign(({ event }: At) => ('at' in event ? { stoppedAt: event.at } : {})),
  });
  const config = {
    id: 'walk',
    initial: 'asking',
    context: ({ input }: { input: WalkContext }) => input,
    on: {
      ANSWER: { actions: keep },
      GO: moves(index, ({ event }) => (event.type === 'GO' ? event.key : undefined)),
      FINISH: { target: '#readBack' },
      PAUSE: stop('#paused'),
      EMERGENCY: stop('#emergency'),
      START_OVER: { target: '#asking', actions: forgetAll },
    },
    states: {
      asking: asking(index),
      readBack: { id: 'readBack', on: { CONFIRM: { target: '#finished' } } },
      finished: { id: 'finished' },
      paused: { id: 'paused', on: { RESUME: goOn } },
      emergency: { id: 'emergency', on: { RESUME: goOn, GO: {}, FINISH: {}, PAUSE: {} } },
    },
  };
  // The states come from data, so the library's types for literal configurations cannot describe them.
  return createMachine(config as never) as unknown as WalkMachine;
}

type AnyMachine = ReturnType<typeof createMachine>;
/** A flow as a machine. */
export type WalkMachine = AnyMachine;

import { describe, expect, it } from 'vitest';
import type { Answer, PlainAnswer } from '../../src/answers/answer.ts';
import { compileCondition } from '../../src/answers/condition.ts';
import { type FlowIndex, indexFlow } from '../../src/answers/flow-index.ts';
import { pathOf, type Step } from '../../src/answers/path.ts';
import { readBound } from '../../src/flow/bound.ts';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import { questionsIn } from '../../src/flow/checks/check-questions.ts';
import type { Flow, Question } from '../../src/flow/flow.ts';
import type { RawCondition } from '../../src/flow/schema/condition.ts';
import { compileMachine, stateOf } from '../../src/machine/compile-machine.ts';
import { type Position, stepWalk } from '../../src/machine/place.ts';
import { readFlow } from '../support/programme.ts';
import { sayableMeasures } from '../support/random-answers.ts';

const whole = readFlow();

/**
 * One stop with what it looks back on, as a flow of its own: all answers of the whole walk together are too many to
 * try, those that the branches of one stop read are not.
 */
function stopWithWhatItReads(stop: string): Flow {
  const wanted = new Set(whole.questions.filter((one) => one.stop === stop).map((one) => one.id));
  for (const one of [...whole.questions].reverse()) {
    if (!wanted.has(one.id)) continue;
    for (const condition of [one.when, one.where])
      for (const id of condition ? questionsIn(condition) : []) wanted.add(id);
    const count = whole.questions.find((other) => one.of !== undefined && other.counts === one.of);
    if (count) wanted.add(count.id);
    if (one.by === 'side') wanted.add('about.sides').add('about.building');
  }
  const questions = whole.questions.filter((one) => wanted.has(one.id));
  return {
    ...whole,
    questions,
    stops: whole.stops.filter(({ id }) => questions.some((one) => one.stop === id)),
  };
}

/** Every comparison in the branches of a flow, alone. */
function comparisonsIn(raw: RawCondition): RawCondition[] {
  const parts = [
    ...(raw.all ?? []),
    ...(raw.any ?? []),
    ...(raw.not ? [raw.not] : []),
    ...(raw.where ? [raw.where] : []),
  ];
  return parts.length > 0 ? parts.flatMap(comparisonsIn) : [raw];
}

const branchesOf = (one: Flow['questions'][number]) =>
  [one.when, one.where].filter((raw) => raw !== undefined);

/** What is tried of a question: one answer for each way in which the branches of the flow can tell its answers apart. */
function telling(index: FlowIndex, answers: readonly PlainAnswer[], question: Question): PlainAnswer[] {
  const tests = index.flow.questions
    .flatMap(branchesOf)
    .flatMap(comparisonsIn)
    .filter((raw) => (raw.question ?? raw.answered) === question.id)
    .map((raw) => compileCondition(raw, (id) => index.questions.get(id)));
  const { facts } = pathOf(index, {});
  const ways = new Map(
    answers.map((answer) => [
      tests.map((test) => test({ ...facts, answer: () => answer }, {})).join(),
      answer,
    ]),
  );
  return [...ways.values()];
}

function valuesOf({ question }: Step, letter: string): (string | number | string[])[] {
  if (question.kind === 'count') return [[], [`${letter}1`]];
  if (question.kind === 'text') return ['words'];
  if (question.kind === 'choice' || question.kind === 'yesNo') return optionIds(question);
  if (question.kind === 'several' || question.kind === 'sides') return optionIds(question).map((id) => [id]);
  return sayableMeasures(question).flatMap((text) => {
    const value = readBound(text, question.kind);
    return typeof value === 'number' ? [value] : [];
  });
}

/** By side, the same on every side. */
function answersTo(index: FlowIndex, step: Step): Answer[] {
  const letter = index.groups.get(step.question.counts ?? '')?.keyLetter ?? '';
  const given = valuesOf(step, letter).map((value) => ({ status: 'given', value }) as const);
  const all = [...given, { status: 'notSure' } as const];
  const plain = step.question.counts ? given : telling(index, all, step.question);
  return plain.map((one) =>
    step.sides ? { status: 'bySide', sides: Object.fromEntries(step.sides.map((side) => [side, one])) } : one,
  );
}

/** question id -> the position of the last question whose branch reads its answer */
function lastReadAt(flow: Flow): Map<string, number> {
  const last = new Map<string, number>();
  flow.questions.forEach((one, position) => {
    for (const id of branchesOf(one).flatMap(questionsIn)) last.set(id, position);
    if (one.of) last.set(flow.questions.find((other) => other.counts === one.of)?.id ?? '', position);
    if (one.by) for (const id of ['about.sides', 'about.building']) last.set(id, position);
  });
  return last;
}

/** Every position that answers lead to, each once for its state and those answers that branches ahead of it read. */
function traverse(flow: Flow): Position[] {
  const index = indexFlow(flow);
  const machine = compileMachine(index);
  const last = lastReadAt(flow);
  const place = new Map(flow.questions.map((one, position) => [one.id, position]));
  const idOf = (key: string) => key.split('/').at(-1) ?? '';
  const keyOf = ({ phase, key, sheet }: Position) => {
    const here = place.get(idOf(key ?? '')) ?? flow.questions.length;
    const ahead = Object.entries(sheet).filter(([one]) => (last.get(idOf(one)) ?? -1) > here);
    return JSON.stringify([phase, key, ahead]);
  };
  const first: Position = { phase: 'asking', key: pathOf(index, {}).steps[0]?.key, sheet: {} };
  const seen = new Map([[keyOf(first), first]]);
  for (const position of seen.values()) {
    const step =
      position.key === undefined ? undefined : pathOf(index, position.sheet).byKey.get(position.key);
    if (position.phase !== 'asking' || !step) continue;
    for (const answer of answersTo(index, step)) {
      const next = stepWalk(machine, index, position, { type: 'ANSWER', key: step.key, answer });
      if (!seen.has(keyOf(next))) seen.set(keyOf(next), next);
    }
    if (seen.size > mostPositions)
      throw new Error(`More than ${mostPositions} positions: the traversal explodes.`);
  }
  return [...seen.values()];
}

const mostPositions = 5_000;

describe('the states of the machine', () => {
  it.each(whole.stops.map((stop) => stop.id))('are all reached by answers alone: %s', (stop) => {
    const positions = traverse(stopWithWhatItReads(stop));
    const reached = new Set(
      positions.flatMap(({ key }) => (key === undefined ? [] : [key.split('/').at(-1) ?? ''])),
    );
    const wanted = whole.questions.filter((one) => one.stop === stop).map((one) => one.id);
    expect(wanted.filter((id) => !reached.has(id))).toEqual([]);
    expect(positions.some((position) => position.phase === 'readBack')).toBe(true);
  });

  it('have names of their own', () => {
    const names = whole.questions.map((one) => stateOf(one.id));
    expect(new Set(names).size).toBe(names.length);
  });
});

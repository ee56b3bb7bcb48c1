import { readBound } from '../flow/bound.ts';
import type { Question } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import type { RawCondition } from '../flow/schema/condition.ts';
import type { PlainAnswer } from './answer.ts';
import type { LimitInForce } from './limits.ts';
import { all, any, not, type Truth } from './truth.ts';

/** The side or member for which a condition is asked; empty for the whole house. */
export interface Spot {
  readonly side?: Side;
  readonly group?: string;
  readonly member?: string;
}

/** What a condition may look at. */
export interface Facts {
  /** `offPath` when the question is not asked at this spot; `undefined` when it is, and has no answer. */
  readonly answer: (question: Question, spot: Spot) => PlainAnswer | 'offPath' | undefined;
  readonly limit: (id: string) => LimitInForce | undefined;
  readonly finding: (id: string, spot: Spot) => Truth;
  readonly computed: (id: string, spot: Spot) => number | undefined;
  readonly sides: readonly Side[];
  readonly members: (group: string) => readonly string[];
  readonly memberSides: (group: string, member: string) => readonly Side[];
}

/** A compiled condition. */
export type Test = (facts: Facts, spot: Spot) => Truth;

type QuestionOf = (id: string) => Question | undefined;

/** Compiles a checked condition into a function; a reference that does not exist is a fault of the check. */
export function compileCondition(raw: RawCondition, questionOf: QuestionOf): Test {
  const test = compileShape(raw, questionOf);
  const { whenUnknown } = raw;
  if (whenUnknown === undefined) return test;
  return (facts, spot) => {
    const truth = test(facts, spot);
    return truth === 'unknown' ? whenUnknown : truth;
  };
}

function compileShape(raw: RawCondition, questionOf: QuestionOf): Test {
  const compile = (one: RawCondition) => compileCondition(one, questionOf);
  if (raw.all) {
    const parts = raw.all.map(compile);
    return (facts, spot) => all(parts, (part) => part(facts, spot));
  }
  if (raw.any) {
    const parts = raw.any.map(compile);
    return (facts, spot) => any(parts, (part) => part(facts, spot));
  }
  if (raw.not) {
    const part = compile(raw.not);
    return (facts, spot) => not(part(facts, spot));
  }
  if (raw.where) return compileOver(raw, compile(raw.where));
  if (raw.finding !== undefined) {
    const id = raw.finding;
    return (facts, spot) => facts.finding(id, spot);
  }
  if (raw.computed !== undefined) return compileComputed(raw, raw.computed);
  if (raw.limit !== undefined) return compileLimit(raw, raw.limit);
  return compileQuestion(raw, questionOf);
}

function compileOver(raw: RawCondition, where: Test): Test {
  const over = raw.some ?? raw.every ?? '';
  const join = raw.some === undefined ? all : any;
  if (over === 'side') {
    return (facts, spot) => join(facts.sides, (side) => where(facts, { ...spot, side }));
  }
  return (facts, spot) => {
    const standing = facts
      .members(over)
      .filter((member) => spot.side === undefined || facts.memberSides(over, member).includes(spot.side));
    return join(standing, (member) => where(facts, { ...spot, group: over, member }));
  };
}

const comparisons = {
  atLeast: (value: number, bound: number) => value >= bound,
  atMost: (value: number, bound: number) => value <= bound,
  above: (value: number, bound: number) => value > bound,
  below: (value: number, bound: number) => value < bound,
} as const;

/** How far two lengths may differ and still be the same: people's feet become metres and back. */
const sameWithin = 1e-9;

function compileCompare(raw: RawCondition, kind: string): (value: number, facts: Facts) => Truth {
  const key = (Object.keys(comparisons) as (keyof typeof comparisons)[]).find(
    (one) => raw[one] !== undefined,
  );
  const bound = key && raw[key];
  if (key === undefined || bound === undefined) return () => 'unknown';
  const holds = (value: number, limit: number) => {
    const same = Math.abs(value - limit) <= sameWithin * Math.max(1, Math.abs(limit));
    return comparisons[key](same ? limit : value, limit) ? 'yes' : 'no';
  };
  if (typeof bound === 'object') {
    return (value, facts) => {
      const limit = facts.limit(bound.limit)?.value;
      return typeof limit === 'number' ? holds(value, limit) : 'unknown';
    };
  }
  const read = readBound(bound, kind);
  return (value) => (typeof read === 'number' ? holds(value, read) : 'unknown');
}

function compileComputed(raw: RawCondition, id: string): Test {
  const compare = compileCompare(raw, 'number');
  return (facts, spot) => {
    const value = facts.computed(id, spot);
    return value === undefined ? 'unknown' : compare(value, facts);
  };
}

function compileLimit(raw: RawCondition, id: string): Test {
  if (raw.is === undefined && raw.oneOf === undefined) {
    const compare = compileCompare(raw, 'number');
    return (facts) => {
      const value = facts.limit(id)?.value;
      return typeof value === 'number' ? compare(value, facts) : 'unknown';
    };
  }
  const wanted = (raw.oneOf ?? [raw.is]).map((one) => (one === 'yes' ? true : one === 'no' ? false : one));
  return (facts) => {
    const value = facts.limit(id)?.value;
    return value === undefined ? 'unknown' : wanted.includes(value) ? 'yes' : 'no';
  };
}

function compileQuestion(raw: RawCondition, questionOf: QuestionOf): Test {
  const question = questionOf(raw.question ?? raw.answered ?? '');
  if (!question) return () => 'unknown';
  if (raw.answered !== undefined) {
    return (facts, spot) => {
      const answer = facts.answer(question, spot);
      return answer !== 'offPath' && answer?.status === 'given' ? 'yes' : 'no';
    };
  }
  const named = raw.is === undefined ? raw.oneOf?.map(String) : [String(raw.is)];
  const compare = named ? undefined : compileCompare(raw, question.kind);
  return (facts, spot) => {
    const answer = facts.answer(question, spot);
    if (answer === 'offPath') return 'no';
    if (answer?.status !== 'given') return 'unknown';
    const { value } = answer;
    if (compare) return compare(typeof value === 'number' ? value : value.length, facts);
    if (typeof value === 'object') return value.some((one) => named?.includes(one)) ? 'yes' : 'no';
    return named?.includes(String(value)) ? 'yes' : 'no';
  };
}

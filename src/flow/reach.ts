import { optionIds } from './checks/check-condition.ts';
import type { Flow } from './flow.ts';
import type { RawCondition } from './schema/condition.ts';

type Question = Flow['questions'][number];
type Questions = ReadonlyMap<string, Question>;
type Bound = NonNullable<RawCondition['atLeast']>;

/** What an answer must be so that a branch is taken. */
export interface Wanted {
  /** Choices: the option ids that will do. */
  readonly options?: readonly string[];
  /** Measures: the comparisons that must hold. */
  readonly measures?: readonly {
    readonly test: 'atLeast' | 'atMost' | 'above' | 'below';
    readonly bound: Bound;
    readonly holds: boolean;
  }[];
}
/** question id -> what its answer must be; by side and in groups, for one side or member. */
export type Assignment = ReadonlyMap<string, Wanted>;

const tests = ['atLeast', 'atMost', 'above', 'below'] as const;

/** Lists assignments under which a condition has the wanted value; each also keeps the questions it reads on the path. */
function* satisfy(
  raw: RawCondition,
  want: boolean,
  given: Assignment,
  all: Questions,
): Generator<Assignment> {
  const parts = raw.all ?? raw.any;
  if (parts) {
    const together = (raw.all !== undefined) === want;
    if (together) yield* satisfyEach(parts, want, given, all);
    else for (const part of parts) yield* satisfy(part, want, given, all);
    return;
  }
  if (raw.not) return yield* satisfy(raw.not, !want, given, all);
  if (raw.where) return yield* satisfy(raw.where, want, given, all);
  const question = all.get(raw.question ?? raw.answered ?? '');
  if (!question) return yield given;
  if (raw.answered !== undefined)
    return yield* want ? onPath(question, given, all) : offPath(question, given, all);
  const wanted = wantedOf(raw, question, want);
  const merged = wanted && merge(given, question.id, wanted);
  if (merged) yield* onPath(question, merged, all);
  if (!want) yield* offPath(question, given, all);
}

function* satisfyEach(
  parts: readonly RawCondition[],
  want: boolean,
  given: Assignment,
  all: Questions,
): Generator<Assignment> {
  const [first, ...rest] = parts;
  if (!first) return yield given;
  for (const next of satisfy(first, want, given, all)) yield* satisfyEach(rest, want, next, all);
}

function wantedOf(raw: RawCondition, question: Question, want: boolean): Wanted | undefined {
  const named = raw.is !== undefined ? [raw.is] : raw.oneOf;
  if (named) {
    const ids = named.map(String);
    const options = optionIds(question).filter((id) => ids.includes(id) === want);
    return options.length > 0 ? { options } : undefined;
  }
  const test = tests.find((key) => raw[key] !== undefined);
  const bound = test && raw[test];
  return test && bound !== undefined ? { measures: [{ test, bound, holds: want }] } : undefined;
}

/** How a value may stand to a bound for a comparison to hold. */
const stands = { atLeast: '=>', atMost: '<=', above: '>', below: '<' } as const;

/** Whether comparisons leave a value to each bound; bounds that only a place settles are compared with themselves. */
function canAllHold(measures: NonNullable<Wanted['measures']>): boolean {
  return measures.every((one) => {
    const same = measures.filter((other) => JSON.stringify(other.bound) === JSON.stringify(one.bound));
    return ['<', '=', '>'].some((way) =>
      same.every(({ test, holds }) => stands[test].includes(way) === holds),
    );
  });
}

function merge(given: Assignment, id: string, wanted: Wanted): Assignment | undefined {
  const before = given.get(id);
  const options =
    before?.options && wanted.options
      ? before.options.filter((one) => wanted.options?.includes(one))
      : (before?.options ?? wanted.options);
  if (options?.length === 0) return undefined;
  const measures = [...(before?.measures ?? []), ...(wanted.measures ?? [])];
  if (!canAllHold(measures)) return undefined;
  return new Map(given).set(id, {
    ...(options ? { options } : {}),
    ...(measures.length > 0 ? { measures } : {}),
  });
}

function* onPath(question: Question, given: Assignment, all: Questions): Generator<Assignment> {
  const count =
    question.of === undefined ? undefined : [...all.values()].find((one) => one.counts === question.of);
  const start = count
    ? merge(given, count.id, { measures: [{ test: 'atLeast', bound: 1, holds: true }] })
    : given;
  const needs = [question.when, question.where].filter((one) => one !== undefined);
  if (start) yield* satisfyEach(needs, true, start, all);
}

function* offPath(question: Question, given: Assignment, all: Questions): Generator<Assignment> {
  if (question.when) yield* satisfy(question.when, false, given, all);
  if (question.where) yield* satisfy(question.where, false, given, all);
}

/** Answers under which a question is asked, or nothing when its branch can never hold. */
export function answersThatReach(question: Question, all: Questions): Assignment | undefined {
  for (const found of onPath(question, new Map(), all)) return found;
  return undefined;
}

/** Answers under which a condition is taken one way; nothing when it cannot be. */
export function answersThatMake(raw: RawCondition, want: boolean, all: Questions): Assignment | undefined {
  for (const found of satisfy(raw, want, new Map(), all)) return found;
  return undefined;
}

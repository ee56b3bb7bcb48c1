import type { Flow, Question } from '../flow/flow.ts';
import type { Side } from '../flow/schema/base.ts';
import { sideNames } from '../flow/schema/base.ts';
import { compileCondition, type Test } from './condition.ts';
import { type Limits, limitsOf } from './limits.ts';

type Role = NonNullable<Question['role']>;
type Group = Flow['groups'][number];

/** A flow made ready for use: looked up by id, its branches compiled. Built once, frozen by use. */
export interface FlowIndex {
  readonly flow: Flow;
  readonly questions: ReadonlyMap<string, Question>;
  readonly groups: ReadonlyMap<string, Group>;
  /** group id -> the question that counts its members */
  readonly countQuestions: ReadonlyMap<string, Question>;
  readonly roles: ReadonlyMap<Role, Question>;
  readonly when: ReadonlyMap<string, Test>;
  readonly where: ReadonlyMap<string, Test>;
  /** rulebook id -> all limits in force there, over the general ones */
  readonly limits: ReadonlyMap<string, Limits>;
  readonly sides: readonly Side[];
}

/** Makes a checked flow ready for use. */
export function indexFlow(flow: Flow): FlowIndex {
  const questions = new Map(flow.questions.map((one) => [one.id, one]));
  const kindOf = (id: string) => questions.get(id);
  const compiled = (key: 'when' | 'where') =>
    new Map(
      flow.questions.flatMap((one): [string, Test][] => {
        const raw = one[key];
        return raw ? [[one.id, compileCondition(raw, kindOf)]] : [];
      }),
    );
  return {
    flow,
    questions,
    groups: new Map(flow.groups.map((one) => [one.id, one])),
    countQuestions: new Map(
      flow.questions.flatMap((one) => (one.counts === undefined ? [] : [[one.counts, one]])),
    ),
    roles: new Map(flow.questions.flatMap((one) => (one.role === undefined ? [] : [[one.role, one]]))),
    when: compiled('when'),
    where: compiled('where'),
    limits: new Map(flow.rulebooks.map((one) => [one.id, limitsOf(flow, one.id)])),
    sides: sideNames,
  };
}

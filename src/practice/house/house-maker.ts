import { compileCondition, type Test } from '../../answers/condition.ts';
import type { Checklist } from '../../assess/checklist.ts';
import type { Question } from '../../flow/flow.ts';
import type { HouseRules } from '../schema/practice-file.ts';
import { tellingOptions } from './telling.ts';

interface Prior {
  readonly test: Test | undefined;
  readonly are: Readonly<Record<string, number>>;
}

/** Answers that cannot be where the test holds. */
interface Never {
  readonly values: readonly string[];
  readonly test: Test;
}

/** The rules by which houses are made up, ready for use. Built once. */
export interface HouseMaker {
  readonly checklist: Checklist;
  readonly rules: HouseRules;
  readonly telling: ReadonlyMap<string, ReadonlySet<string>>;
  readonly priors: ReadonlyMap<string, readonly Prior[]>;
  readonly never: ReadonlyMap<string, readonly Never[]>;
  readonly sideRules: ReadonlyMap<
    string,
    readonly { readonly rule: HouseRules['sides'][number]; readonly test: Test | undefined }[]
  >;
}

function groupBy<T, V>(
  list: readonly T[],
  key: (item: T) => string,
  value: (item: T) => V,
): Map<string, V[]> {
  const map = new Map<string, V[]>();
  for (const item of list) map.set(key(item), [...(map.get(key(item)) ?? []), value(item)]);
  return map;
}

/** Makes the rules of a flow ready. */
export function prepareHouseMaker(checklist: Checklist, rules: HouseRules): HouseMaker {
  const questionOf = (id: string): Question | undefined => checklist.index.questions.get(id);
  const compile = (raw: Parameters<typeof compileCondition>[0]) => compileCondition(raw, questionOf);
  return {
    checklist,
    rules,
    telling: tellingOptions(checklist.flow),
    priors: new Map(
      checklist.flow.questions.map((question) => [
        question.id,
        (question.priors ?? []).map((prior) => ({ test: prior.if && compile(prior.if), are: prior.are })),
      ]),
    ),
    never: groupBy(
      rules.consistent,
      (rule) => rule.question,
      (rule) => ({ values: rule.never, test: compile(rule.if) }),
    ),
    sideRules: groupBy(
      rules.sides,
      (rule) => rule.question,
      (rule) => ({ rule, test: rule.if && compile(rule.if) }),
    ),
  };
}

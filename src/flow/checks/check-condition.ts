import { readBound } from '../bound.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { Flow } from '../flow.ts';
import { type Located, problemAt } from '../located.ts';
import type { FlowProblem } from '../problem.ts';
import { sideNames } from '../schema/base.ts';
import type { RawCondition } from '../schema/condition.ts';
import { type Lookup, reference } from './references.ts';

type Question = Flow['questions'][number];
type Path = readonly (string | number)[];
/** Where a condition is evaluated: for the house, a side, or a member of a group. */
export type Scope = { readonly side: boolean; readonly group: string | undefined };

/** The scope of something decided `per` house, side or group. */
export function scopeOf(per: string): Scope {
  return { side: per === 'side', group: per === 'house' || per === 'side' ? undefined : per };
}

const optionKinds = new Set(['choice', 'yesNo', 'several', 'sides']);
const measuredKinds = new Set(['length', 'number', 'slope', 'count']);

/** The option ids that a question may be answered with. */
export function optionIds(question: Question): string[] {
  if (question.kind === 'yesNo') return ['yes', 'no'];
  if (question.kind === 'sides') return [...sideNames];
  return (question.options ?? []).map((option) => option.id);
}

interface At {
  readonly located: Located<unknown>;
  readonly lookup: Lookup;
}

/** Everything wrong with a condition at its place: references, options, bounds and scope. */
export function checkCondition(at: At, inside: Path, raw: RawCondition, scope: Scope): FlowProblem[] {
  const { located, lookup } = at;
  const deeper = (list: RawCondition[], key: string) =>
    list.flatMap((one, index) => checkCondition(at, [...inside, key, index], one, scope));
  if (raw.all) return deeper(raw.all, 'all');
  if (raw.any) return deeper(raw.any, 'any');
  if (raw.not) return checkCondition(at, [...inside, 'not'], raw.not, scope);
  if (raw.some !== undefined || raw.every !== undefined) return checkOver(at, inside, raw, scope);
  if (raw.finding !== undefined)
    return reference(located, [...inside, 'finding'], 'finding', raw.finding, lookup.findings);
  if (raw.computed !== undefined)
    return reference(located, [...inside, 'computed'], 'computation', raw.computed, lookup.computations);
  if (raw.limit !== undefined)
    return reference(located, [...inside, 'limit'], 'limit', raw.limit, lookup.limits);
  const key = raw.question === undefined ? 'answered' : 'question';
  const id = raw.question ?? raw.answered ?? '';
  const question = lookup.questions.get(id);
  if (!question) return reference(located, [...inside, key], 'question', id, lookup.questions);
  return [...checkScope(at, [...inside, key], question, scope), ...checkTest(at, inside, raw, question)];
}

function checkOver(at: At, inside: Path, raw: RawCondition, scope: Scope): FlowProblem[] {
  const key = raw.some === undefined ? 'every' : 'some';
  const over = raw[key] ?? '';
  const known = new Set(['side', ...at.lookup.groups.keys()]);
  const missing = reference(at.located, [...inside, key], 'group', over, known);
  if (missing.length > 0 || !raw.where) return missing;
  const inner = over === 'side' ? { ...scope, side: true } : { ...scope, group: over };
  return checkCondition(at, [...inside, 'where'], raw.where, inner);
}

function checkScope(at: At, inside: Path, question: Question, scope: Scope): FlowProblem[] {
  if (question.by === 'side' && !scope.side) {
    const text = `"${question.id}" has an answer for each side: ask it under "some: side" or "every: side".`;
    return [problemAt(at.located, inside, text)];
  }
  if (question.of !== undefined && question.of !== scope.group) {
    const text = `"${question.id}" is asked of each of ${question.of}: ask it under "some: ${question.of}" or "every: ${question.of}".`;
    return [problemAt(at.located, inside, text)];
  }
  return [];
}

function checkTest(at: At, inside: Path, raw: RawCondition, question: Question): FlowProblem[] {
  if (raw.answered !== undefined) return [];
  const named = raw.is !== undefined ? [raw.is] : raw.oneOf;
  if (named) return checkOptions(at, inside, raw, question, named);
  if (!measuredKinds.has(question.kind)) {
    const text = `"${question.id}" is a ${question.kind}: compare it with "is" or "oneOf".`;
    return [problemAt(at.located, inside, text)];
  }
  const key = (['atLeast', 'atMost', 'above', 'below'] as const).find((one) => raw[one] !== undefined);
  const bound = key && raw[key];
  if (!key || bound === undefined) return [];
  if (typeof bound === 'object')
    return reference(at.located, [...inside, key, 'limit'], 'limit', bound.limit, at.lookup.limits);
  const read = readBound(bound, question.kind);
  return typeof read === 'number' ? [] : [problemAt(at.located, [...inside, key], read.problem)];
}

function checkOptions(
  at: At,
  inside: Path,
  raw: RawCondition,
  question: Question,
  named: readonly (string | number | boolean)[],
): FlowProblem[] {
  if (!optionKinds.has(question.kind)) {
    const text = `"${question.id}" is a ${question.kind}: compare it with atLeast, atMost, above or below.`;
    return [problemAt(at.located, inside, text)];
  }
  const options = optionIds(question);
  const wrong = named.map(String).filter((id) => !options.includes(id));
  const key = raw.is !== undefined ? 'is' : 'oneOf';
  return wrong.map((id) =>
    problemAt(
      at.located,
      [...inside, key],
      `"${question.id}" has no option "${id}".`,
      didYouMean(id, options) ?? (options.length > 0 ? `It has: ${options.join(', ')}.` : undefined),
    ),
  );
}

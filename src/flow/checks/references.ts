import type * as z from 'zod';
import { didYouMean } from '../did-you-mean.ts';
import type { Flow } from '../flow.ts';
import { type Located, problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import type { Element, Finding } from '../schema/finding.ts';
import type { Group } from '../schema/question.ts';

type Question = Flow['questions'][number];

/** All parts by id, for looking references up. */
export interface Lookup {
  readonly stops: ReadonlySet<string>;
  readonly groups: ReadonlyMap<string, z.infer<typeof Group>>;
  readonly questions: ReadonlyMap<string, Question>;
  readonly findings: ReadonlyMap<string, Finding>;
  readonly elements: ReadonlyMap<string, Element>;
  readonly sets: ReadonlyMap<string, readonly string[]>;
  readonly actions: ReadonlySet<string>;
  readonly cautions: ReadonlySet<string>;
  readonly costs: ReadonlySet<string>;
  readonly sources: ReadonlySet<string>;
  /** Limits of the general rulebook. */
  readonly limits: ReadonlySet<string>;
  readonly rulebooks: ReadonlySet<string>;
  readonly computations: ReadonlySet<string>;
}

const ids = (parts: readonly Located<{ id: string }>[]) => new Set(parts.map((part) => part.item.id));
const byId = <T extends { id: string }>(parts: readonly Located<T>[]) =>
  new Map(parts.map((part) => [part.item.id, part.item]));

/** Indexes the parts of a flow. */
export function indexParts(parts: FlowParts, computations: readonly string[]): Lookup {
  const walk = parts.walks[0]?.item;
  const general = parts.rulebooks.find((one) => one.item.id === walk?.generalRulebook);
  return {
    stops: new Set(walk?.stops.map((stop) => stop.id)),
    groups: byId(parts.groups),
    questions: byId(parts.questions),
    findings: byId(parts.findings),
    elements: byId(parts.elements),
    sets: new Map(parts.sets.map(({ item }) => [item.id, item.members])),
    actions: ids(parts.actions),
    cautions: ids(parts.cautions),
    costs: ids(parts.costs),
    sources: ids(parts.sources),
    limits: new Set(Object.keys(general?.item.limits ?? {})),
    rulebooks: ids(parts.rulebooks),
    computations: new Set(computations),
  };
}

type Keys = { has(id: string): boolean; keys(): Iterable<string> };

/** A problem when `id` is not among `known`. */
export function reference(
  located: Located<unknown>,
  inside: readonly (string | number)[],
  what: string,
  id: string,
  known: Keys,
): FlowProblem[] {
  if (known.has(id)) return [];
  return [problemAt(located, inside, `there is no ${what} "${id}".`, didYouMean(id, known.keys()))];
}

/** One problem for each reference of a list that does not exist. */
export function references(
  located: Located<unknown>,
  inside: string,
  what: string,
  list: readonly string[],
  known: Keys,
): FlowProblem[] {
  return list.flatMap((id, index) => reference(located, [inside, index], what, id, known));
}

/** Problems for ids that are used twice within one kind of part. */
export function duplicateIds(what: string, parts: readonly Located<{ id: string }>[]): FlowProblem[] {
  const first = new Map<string, Located<unknown>>();
  return parts.flatMap((part) => {
    const before = first.get(part.item.id);
    if (!before) {
      first.set(part.item.id, part);
      return [];
    }
    const { line } = before.document.positionOf([...before.path, 'id']);
    const where = `${before.document.path}:${line}`;
    return [problemAt(part, ['id'], `the ${what} "${part.item.id}" is already at ${where}.`)];
  });
}

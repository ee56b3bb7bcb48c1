import { type Located, problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import type { RawCondition } from '../schema/condition.ts';
import type { Element, Finding, WayIn } from '../schema/finding.ts';
import { checkCondition, scopeOf } from './check-condition.ts';
import { type Lookup, reference, references } from './references.ts';

/** Everything wrong with findings, elements, sets and ways in. */
export function checkFindings(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  const answered = new Set(parts.actions.flatMap((action) => action.item.for));
  const used = new Set([
    ...parts.sets.flatMap((set) => set.item.members),
    ...parts.waysIn.flatMap((way) =>
      way.item.chain.map((link) => ('ember' in link ? link.ember : link.flame)),
    ),
  ]);
  return [
    ...parts.findings.flatMap((one) => checkFinding(one, lookup, answered)),
    ...parts.elements.flatMap((one) => checkElement(one, lookup, used)),
    ...parts.sets.flatMap((one) =>
      references(one, '', 'element', one.item.members, lookup.elements).map(atMember),
    ),
    ...parts.waysIn.flatMap((one) => checkWayIn(one, lookup)),
  ];
}

const atMember = (problem: FlowProblem): FlowProblem => ({ ...problem, at: problem.at.replace('..', '.') });

function checkPer(located: Located<{ per: string }>, lookup: Lookup): FlowProblem[] {
  const { per } = located.item;
  return reference(located, ['per'], 'group', per, new Set(['house', 'side', ...lookup.groups.keys()]));
}

/** Findings may rest on other findings, but not in a circle. */
export function findingsIn(condition: RawCondition): string[] {
  const parts = [...(condition.all ?? []), ...(condition.any ?? [])];
  if (condition.not) parts.push(condition.not);
  if (condition.where) parts.push(condition.where);
  return [...(condition.finding === undefined ? [] : [condition.finding]), ...parts.flatMap(findingsIn)];
}

function restsOnItself(id: string, lookup: Lookup, seen: readonly string[] = []): boolean {
  const finding = lookup.findings.get(id);
  if (!finding) return false;
  return findingsIn(finding.when).some(
    (next) =>
      next === seen[0] || next === id || (!seen.includes(next) && restsOnItself(next, lookup, [...seen, id])),
  );
}

function checkFinding(
  located: Located<Finding>,
  lookup: Lookup,
  answered: ReadonlySet<string>,
): FlowProblem[] {
  const { item } = located;
  const problems = [
    ...checkPer(located, lookup),
    ...checkCondition({ located, lookup }, ['when'], item.when, scopeOf(item.per)),
    ...references(located, 'sources', 'source', item.sources, lookup.sources),
  ];
  if (restsOnItself(item.id, lookup))
    problems.push(problemAt(located, ['when'], 'this finding rests on itself.'));
  const has = answered.has(item.id);
  if (!has && item.noAction === undefined)
    problems.push(
      problemAt(
        located,
        ['id'],
        `no action is for the finding "${item.id}": add one, or say why there is none in "noAction".`,
      ),
    );
  if (has && item.noAction !== undefined)
    problems.push(
      problemAt(
        located,
        ['noAction'],
        `the finding "${item.id}" has an action: "noAction" does not belong here.`,
      ),
    );
  return problems;
}

function checkElement(located: Located<Element>, lookup: Lookup, used: ReadonlySet<string>): FlowProblem[] {
  const { item } = located;
  const problems = [
    ...checkPer(located, lookup),
    ...checkCondition({ located, lookup }, ['when'], item.when, scopeOf(item.per)),
    ...references(located, 'sources', 'source', item.sources, lookup.sources),
  ];
  if (!item.ember && !item.flame)
    problems.push(problemAt(located, ['id'], 'an element needs a readiness: "ember:", "flame:" or both.'));
  for (const attack of ['ember', 'flame'] as const) {
    const { low, high } = item[attack] ?? {};
    if (low !== undefined && high !== undefined && low > high)
      problems.push(problemAt(located, [attack, 'low'], 'low is above high.'));
  }
  if (!used.has(item.id)) problems.push(problemAt(located, ['id'], `no way in holds "${item.id}".`));
  return problems;
}

function checkWayIn(located: Located<WayIn>, lookup: Lookup): FlowProblem[] {
  return [
    ...references(located, 'sources', 'source', located.item.sources, lookup.sources),
    ...located.item.chain.flatMap((link, index) => {
      const [attack, id] =
        'ember' in link ? (['ember', link.ember] as const) : (['flame', link.flame] as const);
      const inside = ['chain', index, attack];
      const members = lookup.sets.get(id) ?? (lookup.elements.has(id) ? [id] : undefined);
      if (!members)
        return reference(
          located,
          inside,
          'element or set',
          id,
          new Set([...lookup.sets.keys(), ...lookup.elements.keys()]),
        );
      return members
        .filter((member) => lookup.elements.has(member) && !lookup.elements.get(member)?.[attack])
        .map((member) => problemAt(located, inside, `"${member}" has no readiness under ${attack}.`));
    }),
  ];
}

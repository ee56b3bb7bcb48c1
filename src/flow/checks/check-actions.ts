import { didYouMean } from '../did-you-mean.ts';
import { type Located, problemAt } from '../located.ts';
import type { FlowParts } from '../parts.ts';
import type { FlowProblem } from '../problem.ts';
import type { Action, Caution } from '../schema/action.ts';
import type { Text } from '../schema/base.ts';
import { checkCondition, scopeOf } from './check-condition.ts';
import { type Lookup, reference, references } from './references.ts';

/** Everything wrong with actions and upkeep, the missing caution of a job that can hurt among it. */
export function checkActions(parts: FlowParts, lookup: Lookup): FlowProblem[] {
  const cautions = parts.cautions.map((one) => one.item);
  return [
    ...parts.actions.flatMap((one) => [
      ...checkReferences(one, lookup),
      ...checkConditions(one, lookup),
      ...checkTreats(one, lookup),
      ...checkCautions(one, cautions),
    ]),
    ...parts.upkeep.flatMap((one) => [
      ...(one.item.when
        ? checkCondition({ located: one, lookup }, ['when'], one.item.when, scopeOf('house'))
        : []),
      ...references(one, 'cautions', 'caution', one.item.cautions, lookup.cautions),
      ...references(one, 'sources', 'source', one.item.sources, lookup.sources),
    ]),
  ];
}

function checkReferences(located: Located<Action>, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  return [
    ...reference(located, ['per'], 'group', item.per, new Set(['house', 'side', ...lookup.groups.keys()])),
    ...references(located, 'for', 'finding', item.for, lookup.findings),
    ...item.for.flatMap((id, index) => {
      const finding = lookup.findings.get(id);
      const fits = !finding || finding.per === item.per || item.per === 'house' || finding.per === 'house';
      return fits
        ? []
        : [
            problemAt(
              located,
              ['for', index],
              `"${id}" is found per ${finding.per}, this action is per ${item.per}.`,
            ),
          ];
    }),
    ...references(located, 'requires', 'action', item.requires, lookup.actions),
    ...references(located, 'cautions', 'caution', item.cautions, lookup.cautions),
    ...references(located, 'rules', 'limit', item.rules, lookup.limits),
    ...references(located, 'workedOut', 'computation', item.workedOut, lookup.computations),
    ...references(located, 'sources', 'source', item.sources, lookup.sources),
    ...item.cost.flatMap(({ line, amount }, index) => [
      ...reference(located, ['cost', index, 'line'], 'cost line', line, lookup.costs),
      ...(typeof amount === 'number'
        ? []
        : reference(
            located,
            ['cost', index, 'amount', 'computed'],
            'computation',
            amount.computed,
            lookup.computations,
          )),
    ]),
    ...(item.hours.low > item.hours.high ? [problemAt(located, ['hours'], 'low is above high.')] : []),
  ];
}

function checkConditions(located: Located<Action>, lookup: Lookup): FlowProblem[] {
  const { item } = located;
  const scope = scopeOf(item.per);
  const at = { located, lookup };
  return [
    ...(item.when ? checkCondition(at, ['when'], item.when, scope) : []),
    ...item.laneWhen.flatMap((one, index) => checkCondition(at, ['laneWhen', index, 'if'], one.if, scope)),
    ...item.cautionsWhen.flatMap((one, index) => [
      ...checkCondition(at, ['cautionsWhen', index, 'if'], one.if, scope),
      ...one.cautions.flatMap((id) =>
        reference(located, ['cautionsWhen', index, 'cautions'], 'caution', id, lookup.cautions),
      ),
    ]),
    ...(item.demandedWhen ? checkCondition(at, ['demandedWhen', 'if'], item.demandedWhen.if, scope) : []),
  ];
}

function checkTreats(located: Located<Action>, lookup: Lookup): FlowProblem[] {
  return Object.entries(located.item.treats).flatMap(([id, residual]) => {
    const element = lookup.elements.get(id);
    if (!element) {
      const suggestion = didYouMean(id, lookup.elements.keys());
      return [problemAt(located, ['treats', id], `there is no element "${id}".`, suggestion)];
    }
    if (typeof residual === 'number') return [];
    const missing = (['ember', 'flame'] as const).filter(
      (attack) => residual[attack] !== undefined && !element[attack],
    );
    return missing.map((attack) =>
      problemAt(located, ['treats', id, attack], `"${id}" has no readiness under ${attack}.`),
    );
  });
}

const sentences = (text: Text): string[] =>
  typeof text === 'string' ? [text] : Object.values(text).filter((one) => one !== undefined);

/** A job whose words name a danger carries the caution for it; a job without any says why it is harmless. */
function checkCautions(located: Located<Action>, cautions: readonly Caution[]): FlowProblem[] {
  const { item } = located;
  const given = new Set([...item.cautions, ...item.cautionsWhen.flatMap((one) => one.cautions)]);
  const said = [item.do, ...item.how].flatMap(sentences).join(' ').toLowerCase();
  const problems = cautions.flatMap((caution) => {
    const word = caution.words.find((one) => new RegExp(`\\b${one.toLowerCase()}`).test(said));
    if (word === undefined || given.has(caution.id)) return [];
    return [
      problemAt(located, ['cautions'], `the action speaks of "${word}" without the caution "${caution.id}".`),
    ];
  });
  if (given.size === 0 && item.harmless === undefined)
    problems.push(
      problemAt(
        located,
        ['id'],
        `"${item.id}" has no caution: list what can hurt, or say in "harmless" why nothing can.`,
      ),
    );
  return problems;
}

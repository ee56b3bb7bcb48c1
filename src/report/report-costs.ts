import type { Place } from '../findings/place.ts';
import type { Action } from '../flow/schema/action.ts';
import type { KnownBy } from '../flow/schema/base.ts';
import { costsOfJobs, type JobCost, type Range } from '../planning/job-cost.ts';
import type { Proposal } from '../ranking/actions.ts';
import type { Material } from './material.ts';
import type { Cost, OnTop } from './schema-parts.ts';

/** From what is known best to what is known least. */
const strengths: readonly KnownBy[] = ['read', 'reported', 'practice', 'judgement', 'memory'];

/** The weakest of several ways of knowing. */
export function weakest(list: readonly KnownBy[]): KnownBy {
  return list.reduce((worst, one) => (strengths.indexOf(one) > strengths.indexOf(worst) ? one : worst));
}

/** How well a source is known. */
export function statusOf({ checklist }: Material, source: string): KnownBy {
  return checklist.flow.sources.find((one) => one.id === source)?.status ?? 'memory';
}

function amountOf(material: Material, amount: Action['cost'][number]['amount'], place: Place): number {
  if (typeof amount === 'number') return amount;
  return computedOf(material)(amount.computed, place) ?? amount.otherwise;
}

const computedOf = (material: Material) => material.computed ?? material.assessment.facts.computed;

type Line = Cost['lines'][number];

function totalOf(material: Material, lines: readonly Line[]): Cost | null {
  const prices = material.checklist.flow.costs.filter((one) => lines.some((line) => line.id === one.id));
  const [first] = prices;
  if (!first) return null;
  const sum = (end: 'low' | 'high') => lines.reduce((total, line) => total + line[end] * line.amount, 0);
  return {
    low: sum('low'),
    high: sum('high'),
    currency: first.currency,
    year: Math.min(...prices.map((one) => one.year)),
    status: weakest(prices.map((one) => statusOf(material, one.source))),
    lines: [...lines],
  };
}

/** What a job costs at one place: price lines times amounts; nothing where no line is given. */
export function costAt(material: Material, action: Action, place: Place): Cost | null {
  const lines = action.cost.flatMap((part): Line[] => {
    const price = material.checklist.flow.costs.find((one) => one.id === part.line);
    if (!price) return [];
    const { id, unit, low, high, source } = price;
    const what = material.wording.text(`cost/${id}`);
    return [{ id, what, unit, amount: amountOf(material, part.amount, place), low, high, source }];
  });
  return totalOf(material, lines);
}

/** Lines that a budget counts once, such as a set of tools. */
const countedOnce = (costs: readonly JobCost[]): ReadonlySet<string> =>
  new Set(costs.flatMap((cost) => cost.shared.map(({ id }) => id)));

/** What hired hands cost where a job goes to a trade only at this house: it stands beside the lines of a budget's cost. */
function hiredOf(costs: readonly JobCost[]): Range | null {
  const beside = (end: keyof Range) =>
    costs.reduce((total, { money, lines, shared }) => {
      const own = lines.filter(({ line }) => !shared.some(({ id }) => id === line.id));
      return total + money[end] - own.reduce((sum, { line, amount }) => sum + line[end] * amount, 0);
    }, 0);
  const high = beside('high');
  return high > 1e-6 ? { low: Math.max(0, beside('low')), high } : null;
}

/** The visits of a trade that no price line holds: one for all jobs that share it. */
function visitOf(costs: readonly JobCost[]): Range | null {
  const visits = new Map(
    costs.flatMap(({ shared, lines }) =>
      shared
        .filter(({ id }) => !lines.some(({ line }) => line.id === id))
        .map(({ id, money }) => [id, money]),
    ),
  );
  const sum = (end: keyof Range) => [...visits.values()].reduce((total, money) => total + money[end], 0);
  return sum('high') > 0 ? { low: sum('low'), high: sum('high') } : null;
}

/** What jobs shown as one line cost: equal lines added up, what is paid once counted once; and what a budget adds. */
export function costOfGroup(
  material: Material,
  proposals: readonly Proposal[],
): { readonly cost: Cost | null; readonly onTop: OnTop } {
  const costs = costsOfJobs(material.checklist.flow, proposals, computedOf(material));
  const once = countedOnce(costs);
  const lines = new Map<string, Line>();
  for (const line of proposals.flatMap((one) => costAt(material, one.action, one.place)?.lines ?? [])) {
    const before = lines.get(line.id)?.amount ?? 0;
    const amount = once.has(line.id) ? Math.max(before, line.amount) : before + line.amount;
    lines.set(line.id, { ...line, amount });
  }
  return {
    cost: totalOf(material, [...lines.values()]),
    onTop: {
      currency: material.checklist.flow.costs[0]?.currency ?? '',
      hired: hiredOf(costs),
      visit: visitOf(costs),
    },
  };
}

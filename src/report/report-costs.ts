import type { Place } from '../findings/place.ts';
import type { Action } from '../flow/schema/action.ts';
import type { KnownBy } from '../flow/schema/base.ts';
import type { Material } from './material.ts';
import type { Cost } from './schema-parts.ts';

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
  const computed = material.computed ?? material.assessment.facts.computed;
  return computed(amount.computed, place) ?? amount.otherwise;
}

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

/** Costs of several places together, equal lines added up. */
export function costTogether(material: Material, costs: readonly (Cost | null)[]): Cost | null {
  const lines = new Map<string, Line>();
  for (const line of costs.flatMap((cost) => cost?.lines ?? [])) {
    const before = lines.get(line.id);
    lines.set(line.id, before ? { ...before, amount: before.amount + line.amount } : line);
  }
  return totalOf(material, [...lines.values()]);
}

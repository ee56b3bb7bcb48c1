import type { Computed } from '../findings/find.ts';
import type { Flow } from '../flow/flow.ts';
import type { Cost } from '../flow/schema/action.ts';
import type { Proposal } from '../ranking/actions.ts';

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** A price line with how much of it a job needs. */
export interface PricedLine {
  readonly line: Cost;
  readonly amount: number;
}

/** A cost that is paid once for all jobs that name it. */
export interface SharedCost {
  /** The price line's id, or `trade-visit/` and the kind of job that one visit covers. */
  readonly id: string;
  readonly money: Range;
}

/** What a job costs by itself, and what it shares with others. */
export interface JobCost {
  readonly money: Range;
  /** Of the household's own time: a trade brings its own. */
  readonly hours: Range;
  readonly shared: readonly SharedCost[];
  readonly lines: readonly PricedLine[];
  /** Nothing is known of what the trade asks: no budget can hold this job. */
  readonly unpriced: boolean;
}

/** Units of which one is enough, however many jobs name the line: a visit, a set of tools. */
const paidOnce: ReadonlySet<string> = new Set(['visit', 'set']);
/** The line for the way and set-up of a trade, paid once a visit; a price list may set or drop it. */
const visitLine = 'trade-visit';
/** The line for an hour of hired help: what a job costs in labour when it goes to a trade only at this house. */
const labourLine = 'helper-hour';

function linesOf(flow: Flow, { action, place }: Proposal, computed: Computed): PricedLine[] {
  return action.cost.flatMap(({ line: id, amount }) => {
    const line = flow.costs.find((one) => one.id === id);
    if (!line) return [];
    if (typeof amount === 'number') return [{ line, amount }];
    return [{ line, amount: computed(amount.computed, place) ?? amount.otherwise }];
  });
}

/** A job that only here goes to a trade has prices for its goods alone: its hours are added as hired help. */
function labour(flow: Flow, { action, lane }: Proposal): Range {
  if (lane !== 'trade' || action.lane === 'trade') return { low: 0, high: 0 };
  const hour = flow.costs.find((one) => one.id === labourLine);
  return { low: (hour?.low ?? 0) * action.hours.low, high: (hour?.high ?? 0) * action.hours.high };
}

/** What covers several jobs of a trade: jobs shown as one line are one visit. */
function visitOf(flow: Flow, { action, lane }: Proposal, lines: readonly PricedLine[]): SharedCost[] {
  const visit = flow.costs.find((one) => one.id === visitLine);
  if (lane !== 'trade' || !visit || lines.some(({ line }) => line.unit === 'visit')) return [];
  return [{ id: `${visitLine}/${action.mergeBy ?? action.id}`, money: { low: visit.low, high: visit.high } }];
}

/** What a job costs at its place. */
function costOfJob(flow: Flow, proposal: Proposal, computed: Computed): JobCost {
  const lines = linesOf(flow, proposal, computed);
  const own = lines.filter(({ line }) => !paidOnce.has(line.unit));
  const hired = labour(flow, proposal);
  const sum = (end: keyof Range) =>
    own.reduce((total, { line, amount }) => total + line[end] * amount, hired[end]);
  const shared = lines
    .filter(({ line }) => paidOnce.has(line.unit))
    .map(({ line, amount }) => ({
      id: line.id,
      money: { low: line.low * amount, high: line.high * amount },
    }));
  const trade = proposal.lane === 'trade';
  return {
    money: { low: sum('low'), high: sum('high') },
    hours: trade ? { low: 0, high: 0 } : proposal.action.hours,
    shared: [...shared, ...visitOf(flow, proposal, lines)],
    lines,
    unpriced: trade && lines.length === 0 && hired.high === 0,
  };
}

/**
 * What each job costs at its place. Lines by the visit or by the set are shared: one set of tools does for all jobs, one
 * visit for all jobs that name it, at the largest amount that any of them names. Jobs of one kind done by a trade share
 * one `trade-visit`, where the prices have such a line.
 */
export function costsOfJobs(flow: Flow, list: readonly Proposal[], computed: Computed): JobCost[] {
  const costs = list.map((one) => costOfJob(flow, one, computed));
  const largest = new Map<string, Range>();
  for (const { id, money } of costs.flatMap((cost) => cost.shared)) {
    const { low = 0, high = 0 } = largest.get(id) ?? {};
    largest.set(id, { low: Math.max(low, money.low), high: Math.max(high, money.high) });
  }
  return costs.map((cost) => ({
    ...cost,
    shared: cost.shared.map(({ id, money }) => ({ id, money: largest.get(id) ?? money })),
  }));
}

/** What several jobs cost together: shared costs once. The costs come from one call of `costsOfJobs`. */
export function costTogether(costs: readonly JobCost[]): { readonly money: Range; readonly hours: Range } {
  const shared = new Map(costs.flatMap((cost) => cost.shared.map(({ id, money }) => [id, money] as const)));
  const add = (ranges: readonly Range[]): Range => ({
    low: ranges.reduce((sum, one) => sum + one.low, 0),
    high: ranges.reduce((sum, one) => sum + one.high, 0),
  });
  return {
    money: add([...costs.map((one) => one.money), ...shared.values()]),
    hours: add(costs.map((one) => one.hours)),
  };
}

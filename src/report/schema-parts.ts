import * as z from 'zod';
import { KnownBy, Lane, Side } from '../flow/schema/base.ts';
import { Stability } from './plan-schema.ts';

const Ids = z.array(z.string());

/** A range of money, with the lines it is made of. */
export const Cost = z.strictObject({
  low: z.number(),
  high: z.number(),
  currency: z.string(),
  year: z.number().describe('The oldest year of its lines.'),
  status: KnownBy.describe('The weakest of its lines.'),
  lines: z.array(
    z.strictObject({
      id: z.string(),
      what: z.string(),
      unit: z.string(),
      amount: z.number(),
      low: z.number().describe('For one unit.'),
      high: z.number().describe('For one unit.'),
      source: z.string(),
    }),
  ),
});
export type Cost = z.infer<typeof Cost>;

const Money = z.strictObject({ low: z.number(), high: z.number() });

/** What a budget adds to the price lines of a job. */
const OnTop = z.strictObject({
  currency: z.string(),
  hired: Money.nullable().describe('Hired hands, where a job goes to a trade only at this house.'),
  visit: Money.nullable().describe('Way and set-up of the trade, once for all jobs that share a visit.'),
});
export type OnTop = z.infer<typeof OnTop>;

/** A limit of a rulebook in the reader's units. */
const Rule = z.strictObject({
  id: z.string(),
  what: z.string(),
  value: z.string(),
  own: z.string().nullable().describe('As its source has it, where `value` only comes near it.'),
  note: z.string().nullable(),
  rulebook: z.string(),
  source: z.string(),
  status: KnownBy,
});

const Hours = z.strictObject({ low: z.number(), high: z.number() });

const Contractor = z.strictObject({ ask: z.array(z.string()), permit: z.string() });

/** One job at one place, with the numbers from which its rank can be worked out again. */
export const Action = z.strictObject({
  id: z.string(),
  rank: z.number(),
  turn: z.number().describe('Place in the order of doing.'),
  lane: Lane,
  laneBecause: z.string().nullable(),
  do: z.string(),
  sides: z.array(Side),
  share: z.number().describe('What it takes off the exposure at its turn, over the exposure now.'),
  alone: z.number().describe('What it would take off if nothing else were done, over the exposure now.'),
  treats: z.record(z.string(), z.number()).describe('Element id -> what is left of its readiness.'),
  closes: Ids.describe('Ways in that this action alone brings to nothing.'),
  lessens: z.number().describe('How many ways in it lessens or closes.'),
  findings: Ids,
  cost: Cost.nullable(),
  hours: Hours,
  cautions: Ids,
  requires: Ids.describe('Actions that come before it.'),
  insteadOf: z
    .string()
    .nullable()
    .describe('Actions with the same word do the same: the lowest residual counts.'),
  demanded: z.boolean(),
  costly: z
    .boolean()
    .describe('Left out while every way in that it lessens weighs less than the trade floor.'),
  comesBack: z.boolean(),
  sources: Ids,
  stability: Stability.nullable().describe('How firm the rank is; nothing where it was not worked out.'),
});

/** A job that was weighed and is not advised: its numbers, so that the order can be worked out again. */
export const LeftOut = z.strictObject({
  id: z.string(),
  do: z.string(),
  lane: Lane,
  treats: z.record(z.string(), z.number()),
  requires: Ids,
  insteadOf: z.string().nullable(),
  demanded: z.boolean(),
  costly: z
    .boolean()
    .describe('Left out while every way in that it lessens weighs less than the trade floor.'),
});

/** Jobs of one kind joined as they are shown. */
export const Job = z.strictObject({
  rank: z.number().describe('From 1; 0 for a job that takes nothing off and is not ranked.'),
  tiedWith: z.array(z.number()),
  actions: Ids,
  do: z.string(),
  where: z.string(),
  why: z.string(),
  how: z.array(z.string()),
  workedOut: z.array(z.string()).describe('What the computations say to it.'),
  lane: Lane,
  laneBecause: z.string().nullable(),
  share: z.number(),
  shareText: z.string(),
  alone: z.number(),
  aloneShareText: z.string(),
  aloneText: z.string().nullable(),
  closes: z.number().describe('How many ways in its actions bring to nothing, of all.'),
  lessens: z.number().describe('How many more it makes less likely.'),
  cost: Cost.nullable().describe('The price lines; what is paid once is counted once.'),
  onTop: OnTop,
  hours: Hours,
  cautions: Ids,
  rules: z.array(Rule),
  before: z.array(z.number()).describe('Ranks of jobs to be done before it.'),
  beforeText: z.array(z.string()).describe('Jobs to be done before it that are not ranked, such as a call.'),
  insteadOf: z.array(z.number()).describe('Ranks of jobs that do the same: one of them is enough.'),
  eitherOf: z.array(z.number()).describe('Ranks of jobs that close much the same ways in.'),
  demandedBy: z.string().nullable(),
  contractor: Contractor.nullable(),
  comesBack: z.boolean(),
});

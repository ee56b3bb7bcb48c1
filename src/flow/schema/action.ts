import * as z from 'zod';
import { Id, Lane, Per, Season, Text } from './base.ts';
import { Condition } from './condition.ts';

const Residual = z.number().min(0).max(1);

const Amount = z.union([
  z.number().positive(),
  z.strictObject({ computed: Id, otherwise: z.number().positive() }),
]);

/** What to do; it removes or reduces elements. */
export const Action = z.strictObject({
  id: Id,
  per: Per.default('house'),
  /** The findings it answers: it is proposed where one of them is. */
  for: z.array(Id).min(1),
  /** Proposed only where this holds too. */
  when: Condition.optional(),
  do: Text,
  why: Text,
  /** How to do it, step by step, plain. */
  how: z.array(Text).default([]),
  lane: Lane,
  /** The first that holds moves the job to another lane, and says why. */
  laneWhen: z.array(z.strictObject({ if: Condition, lane: Lane, because: Text })).default([]),
  /** element id -> what is left of its readiness; one number, or by attack. */
  treats: z.record(
    z.string(),
    z.union([Residual, z.strictObject({ ember: Residual.optional(), flame: Residual.optional() })]),
  ),
  insteadOf: Id.optional(),
  requires: z.array(Id).default([]),
  /** Jobs with the same word are joined when shown. */
  mergeBy: Id.optional(),
  cost: z.array(z.strictObject({ line: Id, amount: Amount })).default([]),
  /** Computations of the house whose result the job tells, where it has one. */
  workedOut: z.array(Id).default([]),
  hours: z.strictObject({ low: z.number().min(0), high: z.number().min(0) }),
  cautions: z.array(Id).default([]),
  cautionsWhen: z.array(z.strictObject({ if: Condition, cautions: z.array(Id).min(1) })).default([]),
  /** Needed where no caution is listed: why this cannot hurt. */
  harmless: z.string().min(3).optional(),
  /** The limits of the rulebook behind it. */
  rules: z.array(Id).default([]),
  demandedWhen: z.strictObject({ if: Condition, by: Text }).optional(),
  contractor: z.strictObject({ ask: z.array(Text).min(1), permit: Text }).optional(),
  /** Work that comes back, or a habit. */
  comesBack: z.boolean().optional(),
  sources: z.array(Id).default([]),
});
export type Action = z.infer<typeof Action>;

/** What can hurt someone or break a rule. */
export const Caution = z.strictObject({
  /** How to do what a caller on the phone is asked not to do at all: never said in a call. */
  notInCalls: z.boolean().default(false),
  id: Id,
  say: Text,
  /** Words in an action that call for this caution. */
  words: z.array(z.string()).default([]),
  sources: z.array(Id).min(1),
});
export type Caution = z.infer<typeof Caution>;

/** A price line, for one unit of work or goods. */
export const Cost = z.strictObject({
  id: Id,
  what: Text,
  unit: z.string().min(1),
  low: z.number().min(0),
  high: z.number().min(0),
  currency: z.string().regex(/^[A-Z]{3}$/, 'a currency is three capital letters, such as USD'),
  year: z.number().int(),
  source: Id,
});
export type Cost = z.infer<typeof Cost>;

/** Work that comes round every year, from the house's own answers. */
export const Upkeep = z.strictObject({
  id: Id,
  seasons: z.array(Season).min(1),
  when: Condition.optional(),
  do: Text,
  cautions: z.array(Id).default([]),
  sources: z.array(Id).default([]),
});
export type Upkeep = z.infer<typeof Upkeep>;

import * as z from 'zod';
import { KnownBy, Side } from '../flow/schema/base.ts';

/** A number in the base unit of its dimension (metres, square metres, percent …), and as it is said to the reader. */
const Measured = z.strictObject({
  id: z.string(),
  what: z.string(),
  value: z.number(),
  dimension: z.string(),
  said: z.string(),
});

const Input = z.strictObject({
  id: z.string().describe('A question, a limit, or a name for what was taken for granted.'),
  what: z.string(),
  from: z.enum(['answer', 'limit', 'assumed', 'usual']),
  value: z.union([z.number(), z.string()]),
  dimension: z.string().nullable().describe('Nothing for a choice.'),
  said: z.string(),
});

/** What was worked out at one place; a value that the formula does not cover gives no number. */
export const Computation = z.strictObject({
  id: z.string().describe('Computation and place, such as `limb-up@trees/t1`.'),
  computation: z.string(),
  group: z.enum(['vents', 'heat', 'plants', 'zones', 'supplies']),
  outcome: z.enum(['result', 'outside', 'missing']),
  title: z.string(),
  where: z.string().nullable(),
  sides: z.array(Side),
  text: z.string(),
  inputs: z.array(Input),
  assumptions: z.array(Measured.extend({ source: z.string(), status: KnownBy })),
  values: z.array(Measured),
  shopping: z.array(Measured.extend({ packs: z.number() })),
  notes: z.array(z.string()),
  sources: z.array(z.string()),
  status: KnownBy.nullable().describe('The weakest of its sources; nothing without a result.'),
});
export type Computation = z.infer<typeof Computation>;

import * as z from 'zod';
import { Id, Per, Text } from './base.ts';
import { Condition } from './condition.ts';

/** A fact that follows from answers and lets fire in. */
export const Finding = z.strictObject({
  id: Id,
  per: Per.default('house'),
  when: Condition,
  /** What was found, with {side} or {member} where it is by side or member. */
  say: Text,
  /** Why it matters, one sentence. */
  why: Text,
  sources: z.array(Id).min(1),
  /** A finding without an action says why there is none. */
  noAction: z.string().min(1).optional(),
});
export type Finding = z.infer<typeof Finding>;

/** How readily an element catches, carries or admits under one attack. */
export const Readiness = z.strictObject({
  level: z.enum(['rarely', 'seldom', 'sometimes', 'often', 'readily']),
  value: z.number().gt(0).max(1).optional(),
  low: z.number().gt(0).max(1).optional(),
  high: z.number().gt(0).max(1).optional(),
});

/** A thing that catches, carries or admits fire. */
export const Element = z.strictObject({
  id: Id,
  per: Per.default('house'),
  when: Condition,
  /** A noun phrase in plain words, without side: "quarter-inch mesh". */
  what: Text,
  ember: Readiness.optional(),
  flame: Readiness.optional(),
  basis: z.string().min(3),
  sources: z.array(Id).default([]),
  /** Meets the rulebook: stays in the sum, brings no action. */
  sound: z.boolean().optional(),
});
export type Element = z.infer<typeof Element>;

/** One link of a chain: an element or a set of them, under embers or under flame. */
export const Link = z.union([z.strictObject({ ember: Id }), z.strictObject({ flame: Id })]);

/** A kind of way in: from ember or flame to the inside of the house. */
export const WayIn = z.strictObject({
  id: Id,
  say: Text,
  chain: z.array(Link).min(1).max(5),
  /** Counted once a side (usual), or once for the house. */
  once: z.boolean().optional(),
  sources: z.array(Id).default([]),
});
export type WayIn = z.infer<typeof WayIn>;

import * as z from 'zod';
import { Id, KnownBy, Quantity, Text } from './base.ts';

/** A number or fact from a rulebook. */
export const Limit = z.strictObject({
  value: z.union([Quantity, z.boolean()]),
  what: Text,
  source: Id,
  note: Text.optional(),
});
export type Limit = z.infer<typeof Limit>;

/** The limits and notes of one place, over the general ones. */
export const Rulebook = z.strictObject({
  id: Id,
  title: z.string().min(1),
  /** Rulebooks over which this one lies; the general one lies under all. */
  over: Id.optional(),
  invented: z.boolean().optional(),
  hemisphere: z.enum(['north', 'south']).default('north'),
  units: z.enum(['imperial', 'metric']),
  currency: z.string().regex(/^[A-Z]{3}$/, 'a currency is three capital letters, such as USD'),
  emergencyNumber: z.string().min(1),
  /** Whom to ask about local code. */
  authority: Text,
  limits: z.record(Id, Limit),
  notes: z.array(z.strictObject({ say: Text, source: Id, stop: Id.optional() })).default([]),
});
export type Rulebook = z.infer<typeof Rulebook>;

/** A publication, once. */
export const Source = z.strictObject({
  id: Id,
  title: z.string().min(1),
  by: z.string().min(1),
  year: z.union([z.number().int(), z.string()]).optional(),
  status: KnownBy,
  note: z.string().optional(),
  url: z.string().url().optional(),
});
export type Source = z.infer<typeof Source>;

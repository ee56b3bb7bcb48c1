import * as z from 'zod';
import { Id, Quantity, Text } from './base.ts';
import { Condition } from './condition.ts';

/** One thing a person may answer, with the words people really use for it. */
export const Option = z.strictObject({
  id: Id,
  label: Text,
  words: z.array(z.string().min(1)).default([]),
  /** In a question with several answers: this one stands alone ("none of these"). */
  alone: z.boolean().optional(),
});
export type Option = z.infer<typeof Option>;

/** A measure that can be picked by its look instead of measured: "as thick as a pencil". */
export const Pick = z.strictObject({
  value: Quantity,
  label: Text,
  words: z.array(z.string().min(1)).default([]),
});

/** How likely each answer is when it is not known; the first whose `if` holds is used. */
export const Prior = z.strictObject({
  if: Condition.optional(),
  /** option id, or a quantity such as `4 ft`, to probability; `several`: each on its own. */
  are: z.record(z.string(), z.number().min(0).max(1)),
  basis: z.string().min(3),
});

const CallText = z.strictObject({
  /** Read aloud, one breath, no jargon. */
  say: z.string().min(1),
  /** What to listen for, and what the answers people give mean. */
  listen: z.string().min(1),
  /** What to do if they cannot tell. */
  cannotTell: z.string().min(1),
});

export const questionKinds = [
  'choice',
  'yesNo',
  'several',
  'sides',
  'length',
  'number',
  'slope',
  'text',
  'count',
] as const;
/** What the walk itself takes from an answer, besides what findings read. */
export const questionRoles = [
  'danger',
  'place',
  'units',
  'sides',
  'yearBuilt',
  'tenure',
  'building',
  'label',
] as const;

export const Question = z.strictObject({
  id: Id,
  kind: z.enum(questionKinds),
  /** One value for each side, asked in one prompt. */
  by: z.literal('side').optional(),
  /** With `by: side`: the sides it is asked about. */
  where: Condition.optional(),
  /** A question about each member of this group. */
  of: Id.optional(),
  /** With `kind: count`: the group whose members it counts. */
  counts: Id.optional(),
  role: z.enum(questionRoles).optional(),
  /** Asked only when this holds; its root says what to do when unknown. */
  when: Condition.optional(),
  /** Two or three words for lists: "roof covering". */
  short: z.string().min(1).optional(),
  ask: Text,
  look: Text,
  good: Text,
  why: Text,
  call: CallText,
  options: z.array(Option).optional(),
  /** Yes and no: what people say instead, for this question only ("buried" for no). */
  words: z
    .strictObject({
      yes: z.array(z.string().min(1)).default([]),
      no: z.array(z.string().min(1)).default([]),
    })
    .optional(),
  /** Lengths: the end of a range that is taken, since it is the unsafe one. */
  unsafeEnd: z.enum(['low', 'high']).optional(),
  /** Lengths: the units a bare number is in. */
  bare: z
    .strictObject({ imperial: z.enum(['in', 'ft', 'yd']), metric: z.enum(['mm', 'cm', 'm']) })
    .optional(),
  /** Measures that people can pick by sight; a range is given at its unsafe end. */
  picks: z.array(Pick).optional(),
  min: Quantity.optional(),
  max: Quantity.optional(),
  priors: z.array(Prior).optional(),
  /** Seconds a person needs to answer, for the short call. */
  seconds: z.number().positive().default(15),
  /** Where to look for, or measure: never by climbing. */
  cautions: z.array(Id).default([]),
  renamedFrom: z.array(Id).default([]),
});
export type Question = z.infer<typeof Question>;

export const Group = z.strictObject({
  id: Id,
  one: z.string().min(1),
  many: z.string().min(1),
  max: z.number().int().min(1).max(12),
  /** Members' keys are this letter and a number that is never used twice. */
  keyLetter: z.string().regex(/^[a-z]$/, 'a key letter is one small letter'),
  /** The member question that says on which sides it stands. */
  sides: Id,
});
export type Group = z.infer<typeof Group>;

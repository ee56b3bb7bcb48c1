import * as z from 'zod';
import { KnownBy, Side } from '../flow/schema/base.ts';

const Sides = z.array(Side);
const Ids = z.array(z.string());

/** A finding at its place. */
export const Finding = z.strictObject({
  id: z.string(),
  stop: z.string(),
  sides: Sides,
  sources: Ids,
});

/** Findings of one kind joined as they are shown. */
export const FindingLine = z.strictObject({
  stop: z.string(),
  findings: Ids,
  text: z.string(),
  why: z.string(),
  noAction: z.string().nullable().describe('Why no job can change it.'),
});

export const Element = z.strictObject({
  id: z.string(),
  what: z.string(),
  side: Side.nullable().describe(
    'Nothing for an element that stands on every side or belongs to a tree or shed.',
  ),
  sides: Sides,
  readiness: z
    .number()
    .describe('In (0, 1]: how readily it catches, carries or admits. Judgement, relative.'),
  low: z.number(),
  high: z.number(),
  basis: z.string(),
  sources: Ids,
});

export const WayIn = z.strictObject({
  id: z.string(),
  text: z.string(),
  side: Side.nullable(),
  elements: Ids,
  weight: z.number().describe('Product of the readiness of its elements.'),
  sources: Ids,
});

export const ToFindOut = z.strictObject({
  key: z.string(),
  stop: z.string(),
  question: z.string(),
  where: z.string().nullable(),
  how: z.string(),
  why: z.enum(['notSure', 'skipped', 'notAsked']),
  sides: Sides,
  stake: z
    .number()
    .describe(
      'Exposure that jobs could take off if it were known, with the likelihood of each answer; relative units.',
    ),
  opens: z.boolean().describe('Further questions hang on it, which the stake leaves out.'),
});

export const Source = z.strictObject({
  id: z.string(),
  title: z.string(),
  by: z.string(),
  year: z.union([z.number(), z.string()]).nullable(),
  status: KnownBy,
  note: z.string().nullable(),
  url: z.string().nullable(),
});

export const AnswersOfStop = z.strictObject({
  stop: z.string(),
  lines: z.array(
    z.strictObject({
      key: z.string(),
      question: z.string(),
      answer: z.string(),
      typed: z.boolean().describe('Words that a person typed: never read as markup.'),
    }),
  ),
});

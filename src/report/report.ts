import * as z from 'zod';
import { Season } from '../flow/schema/base.ts';
import { Planning } from './plan-schema.ts';
import { Computation } from './schema-computations.ts';
import { Action, Job, LeftOut } from './schema-parts.ts';
import { AnswersOfStop, Element, Finding, FindingLine, Source, ToFindOut, WayIn } from './schema-seen.ts';

const Ids = z.array(z.string());

const Walk = z.strictObject({
  id: z.string().nullable(),
  label: z.string().nullable().describe('Words that a person typed.'),
  date: z.string(),
  flow: z.string().describe('Fingerprint of the flow files.'),
  audience: z.string(),
  language: z.string(),
  units: z.enum(['imperial', 'metric']),
  seed: z.number(),
  asked: z.number().describe('Questions on the path.'),
  open: z.number().describe('Questions on the path without an answer.'),
});

const PlaceRules = z.strictObject({
  id: z.string(),
  title: z.string(),
  invented: z.boolean(),
  hemisphere: z.enum(['north', 'south']),
  authority: z.string(),
  currency: z.string().describe('Of the place; prices may be in another one.'),
  emergencyNumber: z.string(),
  notes: z.array(z.strictObject({ text: z.string(), source: z.string() })),
});

/** A report as plain data; its texts are in the reader's language and units, and may hold light Markdown emphasis. */
export const Report = z.strictObject({
  version: z.literal(1),
  walk: Walk,
  stops: z.array(z.strictObject({ id: z.string(), title: z.string() })),
  rulebook: PlaceRules,
  exposure: z
    .strictObject({ now: z.number(), left: z.number() })
    .describe('Sum over the ways in; relative units, never a probability.'),
  tradeFloor: z
    .number()
    .describe('A trade job is advised while a way in that it lessens weighs at least this.'),
  inOrder: z.boolean().describe('Nothing costly is needed.'),
  biggestChange: z.number().nullable().describe('Rank of the job that takes most off by itself.'),
  firstHour: z.array(z.strictObject({ actions: Ids, do: z.string() })).describe('The best first hour.'),
  jobs: z.array(Job).describe('The ranked list as shown: jobs of one kind joined.'),
  alsoWorth: z.array(Job).describe('Jobs that close no way in, such as a call: not ranked.'),
  actions: z.array(Action),
  plan: Ids.describe('Action ids in the order of doing.'),
  leftOut: z.array(LeftOut),
  findings: z.array(Finding),
  findingLines: z.array(FindingLine),
  elements: z.array(Element),
  waysIn: z.array(WayIn),
  toFindOut: z.array(ToFindOut),
  computations: z.array(Computation),
  cautions: z.array(z.strictObject({ id: z.string(), short: z.string(), text: z.string(), sources: Ids })),
  planning: Planning.nullable().describe('Doubt, budget, curve and visit brief, where they were worked out.'),
  upkeep: z.array(
    z.strictObject({ id: z.string(), seasons: z.array(Season), do: z.string(), cautions: Ids }),
  ),
  sources: z.array(Source),
  answers: z.record(z.string(), z.unknown()).describe('The answer sheet: key -> answer, in base units.'),
  answersRead: z.array(AnswersOfStop),
  notes: z.array(z.string()).describe('Words that a person typed.'),
});
export type Report = z.infer<typeof Report>;
export type ReportJob = Report['jobs'][number];

/** JSON Schema (draft 2020-12) of a report. */
export function reportJsonSchema(): object {
  return z.toJSONSchema(Report, { target: 'draft-2020-12' });
}

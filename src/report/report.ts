import { z } from 'zod';
import { KnownBy, Lane, Season, Side } from '../flow/schema/base.ts';

const Sides = z.array(Side);
const Ids = z.array(z.string());

const Finding = z.strictObject({
  id: z.string(),
  stop: z.string(),
  sides: Sides,
  text: z.string(),
  why: z.string(),
  sources: Ids,
  noAction: z.string().nullable(),
});

const Element = z.strictObject({
  id: z.string(),
  what: z.string(),
  side: Side.nullable().describe('Nothing for an element that stands on every side or belongs to a tree or shed.'),
  sides: Sides,
  readiness: z.number().describe('In (0, 1]: how readily it catches, carries or admits. Judgement, relative.'),
  low: z.number(),
  high: z.number(),
  basis: z.string(),
  sources: Ids,
});

const WayIn = z.strictObject({
  id: z.string(),
  text: z.string(),
  side: Side.nullable(),
  elements: Ids,
  weight: z.number().describe('Product of the readiness of its elements.'),
});

const Rule = z.strictObject({ id: z.string(), text: z.string(), rulebook: z.string(), source: z.string(), status: KnownBy });

const Cost = z.strictObject({
  low: z.number(),
  high: z.number(),
  currency: z.string(),
  year: z.number(),
  status: KnownBy,
  lines: z.array(z.strictObject({ id: z.string(), what: z.string(), unit: z.string(), amount: z.number(), low: z.number(), high: z.number(), source: z.string() })),
});

const Action = z.strictObject({
  id: z.string(),
  rank: z.number(),
  turn: z.number().describe('Place in the order of doing.'),
  lane: Lane,
  laneBecause: z.string().nullable(),
  do: z.string(),
  why: z.string(),
  how: z.array(z.string()),
  sides: Sides,
  share: z.number().describe('What it takes off the exposure at its turn, over the exposure now.'),
  alone: z.number().describe('What it would take off if nothing else were done, over the exposure now.'),
  treats: z.record(z.string(), z.number()).describe('Element id -> what is left of its readiness.'),
  closes: Ids.describe('Ways in that this action alone brings to nothing.'),
  lessens: z.number().describe('How many ways in it lessens or closes.'),
  findings: Ids,
  cost: Cost.nullable(),
  hours: z.strictObject({ low: z.number(), high: z.number() }),
  cautions: Ids,
  rule: z.array(Rule),
  requires: Ids,
  insteadOf: z.string().nullable(),
  demandedBy: z.string().nullable(),
  contractor: z.strictObject({ ask: z.array(z.string()), permit: z.string() }).nullable(),
  comesBack: z.boolean(),
  stability: z.null().describe('How firm the rank is; nothing while it was not worked out.'),
});

const Job = z.strictObject({
  rank: z.number(),
  actions: Ids,
  do: z.string(),
  where: z.string(),
  lane: Lane,
  share: z.number(),
  shareText: z.string(),
  alone: z.number(),
  aloneText: z.string().nullable(),
  closes: z.number(),
  lessens: z.number(),
  eitherOf: z.array(z.number()),
});

/** A report as plain data; its texts are in the reader's language and units. */
export const Report = z.strictObject({
  version: z.literal(1),
  walk: z.strictObject({
    id: z.string().nullable(),
    label: z.string().nullable(),
    date: z.string(),
    flow: z.string(),
    audience: z.string(),
    language: z.string(),
    units: z.enum(['imperial', 'metric']),
    seed: z.number(),
    open: z.number().describe('Questions on the path without an answer.'),
  }),
  rulebook: z.strictObject({
    id: z.string(),
    title: z.string(),
    invented: z.boolean(),
    authority: z.string(),
    emergencyNumber: z.string(),
    notes: z.array(z.strictObject({ text: z.string(), source: z.string() })),
  }),
  exposure: z.strictObject({ now: z.number(), left: z.number() }).describe('Sum over the ways in; relative units, never a probability.'),
  inOrder: z.boolean().describe('Nothing costly is needed.'),
  biggestChange: z.number().nullable().describe('Rank of the job that takes most off by itself.'),
  firstHour: Ids.describe('Actions for the best first hour.'),
  jobs: z.array(Job).describe('The ranked list as shown: jobs of one kind joined.'),
  actions: z.array(Action),
  plan: Ids.describe('Action ids in the order of doing.'),
  findings: z.array(Finding),
  elements: z.array(Element),
  waysIn: z.array(WayIn),
  toFindOut: z.array(
    z.strictObject({ key: z.string(), question: z.string(), how: z.string(), why: z.enum(['notSure', 'skipped', 'notAsked']), sides: Sides, stake: z.number() }),
  ),
  computations: z.array(z.unknown()),
  cautions: z.array(z.strictObject({ id: z.string(), text: z.string(), sources: Ids })),
  upkeep: z.array(z.strictObject({ id: z.string(), seasons: z.array(Season), do: z.string() })),
  sources: z.array(
    z.strictObject({ id: z.string(), title: z.string(), by: z.string(), year: z.union([z.number(), z.string()]).nullable(), status: KnownBy, note: z.string().nullable() }),
  ),
  answers: z.record(z.string(), z.unknown()).describe('The answer sheet: key -> answer, in base units.'),
  answersRead: z.array(z.strictObject({ stop: z.string(), lines: z.array(z.strictObject({ question: z.string(), answer: z.string() })) })),
  notes: z.array(z.string()),
});
export type Report = z.infer<typeof Report>;
export type ReportAction = z.infer<typeof Action>;
export type ReportJob = z.infer<typeof Job>;

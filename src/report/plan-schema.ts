import * as z from 'zod';

const Ids = z.array(z.string());
const Range = z.strictObject({ low: z.number(), high: z.number() });

/** Where a job or a line stood when every readiness was drawn afresh. */
export const Stability = z.strictObject({
  topThree: z.number().describe('Part of the draws in which it was among the first three.'),
  from: z.number().describe('5th percentile of its ranks.'),
  to: z.number().describe('95th percentile of its ranks.'),
});

const Doubt = z.strictObject({
  draws: z.number(),
  seed: z.number(),
  lines: z.array(Stability.extend({ rank: z.number() })),
  firm: z.number().describe('So many places from the top hold in nine of ten draws.'),
  sameThree: z.number().describe('Part of the draws in which the first three lines were the same three.'),
  tossUps: z.array(
    z.strictObject({
      ranks: z.array(z.number()).length(2),
      firstAhead: z.number().describe('Part of the draws in which the first of the two came first.'),
    }),
  ),
  sensitive: z
    .array(
      z.strictObject({
        element: z.string(),
        what: z.string(),
        readiness: z.number(),
        low: z.number(),
        high: z.number(),
        changesAt: z.number(),
        towards: z.enum(['low', 'high']),
        firstThree: z
          .array(z.number())
          .describe('Ranks in the list as it is; 0 for a line that is not on it.'),
        change: z.enum(['lines', 'order']),
      }),
    )
    .describe('Readiness values that, moved alone, change the first three lines.'),
});

const Step = z.strictObject({ extra: z.number(), adds: z.number(), newActions: Ids, dropped: Ids });

const Budget = z.strictObject({
  limits: z.strictObject({ money: z.number().nullable(), hours: z.number().nullable() }),
  currency: z.string().nullable(),
  actions: z.array(
    z.strictObject({ id: z.string(), do: z.string(), share: z.number(), money: Range, hours: Range }),
  ),
  money: Range.describe('All together, what is shared counted once. The high end keeps within the limit.'),
  hours: Range.describe('Of the household: a trade brings its own.'),
  takenOff: z.number().describe('Over the exposure now.'),
  possible: z.number().describe('What the whole list takes off, over the exposure now.'),
  exact: z.boolean().describe('No other set within the limits takes off more.'),
  gap: z.number().describe('At most this part of what is taken off could be missed.'),
  leftOut: z.array(
    z.strictObject({
      id: z.string(),
      do: z.string(),
      adds: z.number(),
      money: Range,
      hours: Range,
      why: z.enum(['limit', 'little', 'noPrice']),
    }),
  ),
  moreMoney: Step.nullable(),
  moreHours: Step.nullable(),
});

const Curve = z.strictObject({
  currency: z.string().nullable(),
  points: z.array(
    z.strictObject({
      action: z.string().nullable().describe('The job just done; nothing at the start.'),
      do: z.string().nullable(),
      money: Range,
      hours: Range,
      left: z.number().describe('What is left of the exposure, as a part.'),
    }),
  ),
  floor: z.number().describe('What no job of the list takes off, as a part.'),
});

const VisitBrief = z.strictObject({
  first: Ids.describe('Keys of the unknown answers that would change most.'),
  leftOut: z.number(),
  stops: z.array(
    z.strictObject({
      stop: z.string(),
      toCheck: z.array(
        z.strictObject({
          key: z.string(),
          question: z.string(),
          where: z.string().nullable(),
          because: z.enum(['notSure', 'skipped', 'notAsked', 'told', 'guess']),
          reported: z.string().nullable(),
          typed: z.boolean(),
          how: z.string(),
          change: z
            .number()
            .nullable()
            .describe('What acting on the first three lines now would miss; relative units.'),
          stake: z.number().nullable(),
        }),
      ),
      reported: z.array(
        z.strictObject({
          key: z.string(),
          question: z.string(),
          answer: z.string(),
          typed: z.boolean().describe('Words that a person typed: never read as markup.'),
          how: z.enum(['seen', 'told', 'guess', 'notSaid']),
        }),
      ),
    }),
  ),
});

/** What goes beyond the order of the list. */
export const Planning = z.strictObject({
  doubt: Doubt,
  budget: Budget.nullable(),
  curve: Curve,
  visitBrief: VisitBrief,
});

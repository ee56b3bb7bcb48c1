import * as z from 'zod';
import { Id, Quantity } from './base.ts';

const Bound = z.union([Quantity, z.strictObject({ limit: Id })]);
const Scalar = z.union([z.string(), z.number(), z.boolean()]);

/** A condition as written in a flow file; `oneShape` below says which keys go together. */
export interface RawCondition {
  all?: RawCondition[] | undefined;
  any?: RawCondition[] | undefined;
  not?: RawCondition | undefined;
  question?: string | undefined;
  computed?: string | undefined;
  limit?: string | undefined;
  is?: string | number | boolean | undefined;
  oneOf?: (string | number | boolean)[] | undefined;
  atLeast?: z.infer<typeof Bound> | undefined;
  atMost?: z.infer<typeof Bound> | undefined;
  above?: z.infer<typeof Bound> | undefined;
  below?: z.infer<typeof Bound> | undefined;
  answered?: string | undefined;
  finding?: string | undefined;
  some?: string | undefined;
  every?: string | undefined;
  where?: RawCondition | undefined;
  whenUnknown?: 'yes' | 'no' | undefined;
}

const subjects = ['question', 'computed', 'limit'] as const;
const tests = ['is', 'oneOf', 'atLeast', 'atMost', 'above', 'below'] as const;
const alone = ['all', 'any', 'not', 'answered', 'finding'] as const;

/** Says what is wrong with the set of keys of a condition, or nothing when they make one shape. */
function oneShape(raw: RawCondition): string | undefined {
  const heads = [...subjects, ...alone, 'some', 'every'].filter((key) => key in raw);
  const testCount = tests.filter((key) => key in raw).length;
  const [head] = heads;
  if (head === undefined)
    return 'A condition starts with one of: question, computed, limit, all, any, not, answered, finding, some, every';
  if (heads.length > 1)
    return `A condition has one subject, this has ${heads.join(' and ')}: put them under "all:" or "any:"`;
  if ((subjects as readonly string[]).includes(head)) {
    return testCount === 1 ? undefined : `"${head}" needs exactly one of: ${tests.join(', ')}`;
  }
  if (testCount > 0) return `"${head}" takes no comparison`;
  if (head === 'some' || head === 'every')
    return raw.where ? undefined : `"${head}" needs "where:" with a condition`;
  return raw.where ? `"where" goes with "some" or "every" only` : undefined;
}

/**
 * A typed condition; never an expression in a string.
 * Its value is yes, no or unknown; `whenUnknown` turns unknown into yes or no at that place.
 */
export const Condition: z.ZodType<RawCondition> = z
  .strictObject({
    get all() {
      return z.array(Condition).min(1).optional();
    },
    get any() {
      return z.array(Condition).min(1).optional();
    },
    get not() {
      return Condition.optional();
    },
    question: Id.optional(),
    computed: Id.optional(),
    limit: Id.optional(),
    is: Scalar.optional(),
    oneOf: z.array(Scalar).min(1).optional(),
    atLeast: Bound.optional(),
    atMost: Bound.optional(),
    above: Bound.optional(),
    below: Bound.optional(),
    answered: Id.optional(),
    finding: Id.optional(),
    some: Id.optional(),
    every: Id.optional(),
    get where() {
      return Condition.optional();
    },
    whenUnknown: z.enum(['yes', 'no']).optional(),
  })
  .superRefine((raw, context) => {
    const problem = oneShape(raw as RawCondition);
    if (problem) context.addIssue({ code: 'custom', message: problem });
  }) as unknown as z.ZodType<RawCondition>;

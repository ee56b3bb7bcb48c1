import * as z from 'zod';

/** Ids are lower-case words joined by `-` and `.`, such as `vents.quarter-mesh`. */
export const Id = z
  .string()
  .regex(
    /^[a-z][a-zA-Z0-9]*(?:[.-][a-zA-Z0-9]+)*$/,
    'an id is words of letters and digits joined by "." or "-", starting with a small letter',
  );

/** A sentence for a person: one for every audience, or one for each where they differ. */
export const Text = z.union([
  z.string().min(1),
  z.strictObject({
    resident: z.string().min(1),
    volunteer: z.string().min(1).optional(),
    trainee: z.string().min(1).optional(),
  }),
]);
export type Text = z.infer<typeof Text>;

export const sideNames = ['front', 'left', 'back', 'right'] as const;
/** A side of the house as you face the front door. */
export const Side = z.enum(sideNames);
export type Side = z.infer<typeof Side>;

/** How well a source or a value is known. */
export const KnownBy = z.enum(['read', 'reported', 'memory', 'practice', 'judgement']);
export type KnownBy = z.infer<typeof KnownBy>;

/** Who does a job: the resident by hand, with things from a hardware shop, or a trade. */
export const Lane = z.enum(['hand', 'shop', 'trade']);
export type Lane = z.infer<typeof Lane>;

export const Season = z.enum(['spring', 'summer', 'autumn', 'winter']);

/** A number with a unit as people write it (`4 ft`, `1/8 in`, `20 %`), or a bare number. */
export const Quantity = z.union([z.number(), z.string().min(1)]);

/** Where something is decided: once for the house, for each side, or for each member of a group. */
export const Per = z.union([z.literal('house'), z.literal('side'), Id]);

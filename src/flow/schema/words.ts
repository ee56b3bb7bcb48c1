import * as z from 'zod';

const Phrases = z.array(z.string().min(1)).min(1);

/** The words a language uses for what is the same in every question. */
export const Words = z.strictObject({
  language: z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/),
  yes: Phrases,
  no: Phrases,
  /** A clear yes to a request on which much hangs: nothing else may stand beside these. */
  agree: Phrases,
  /** A clear no to it. */
  refuse: Phrases,
  /** A clear yes to whether somebody is out of danger. */
  safe: Phrases,
  notSure: Phrases,
  skip: Phrases,
  none: Phrases,
  all: Phrases,
  /** Between a whole and what is left out of it: "all except the back". */
  except: Phrases,
  and: Phrases,
  sides: z.strictObject({ front: Phrases, left: Phrases, back: Phrases, right: Phrases }),
  commands: z.strictObject({
    back: Phrases,
    help: Phrases,
    why: Phrases,
    pause: Phrases,
    where: Phrases,
    jump: Phrases,
    change: Phrases,
    startOver: Phrases,
    finish: Phrases,
    stop: Phrases,
    remove: Phrases,
    /** Erase everything kept about this person, after one more question. */
    forget: Phrases,
  }),
  emergency: z.strictObject({
    /** Said like this, it is an emergency. */
    sure: Phrases,
    /** It may be one: met with one short question. */
    doubt: Phrases,
    /** Never one, although it holds such a word: "fire pit". */
    never: Phrases,
  }),
  numbers: z.record(z.string(), z.number()),
  /** unit id -> the words for it */
  units: z.record(z.string(), Phrases),
  about: Phrases,
  lessThan: Phrases,
  moreThan: Phrases,
  between: Phrases,
});
export type Words = z.infer<typeof Words>;

import * as z from 'zod';
import { Id } from './base.ts';

const Phrases = z.array(z.string().min(1)).min(1);

/** What a volunteer types during a call besides answers, and what a caller may start that can hurt. */
export const Call = z.strictObject({
  words: z.strictObject({
    /** Alone: the stop line to read out. The first is the key. */
    stopLine: Phrases,
    /** Before a free note. */
    note: Phrases,
    /** Before the minutes that a call may take. */
    minutes: Phrases,
    /** Instead of a number of minutes: all questions. */
    noLimit: Phrases,
    /** Before a number to call back. */
    callBack: Phrases,
    /** Instead of a number: none, or forget the one that is kept. */
    noNumber: Phrases,
    /** Before an answer that corrects an earlier one. */
    earlier: Phrases,
    /** Said beside an answer, without meaning. */
    aside: Phrases,
    /** Between the name of a thing and what it is. */
    is: Phrases,
    /** A code with which the caller goes on alone. */
    handOver: Phrases,
    /** A code with which another volunteer goes on. */
    toColleague: Phrases,
    /** Before anything was answered: the one who writes guides somebody else. */
    guide: Phrases,
    /** What was left out for time. */
    leftOut: Phrases,
  }),
  /** The first whose words are heard gives its stop line, `call.stop.ID`. */
  unsafe: z
    .array(
      z.strictObject({
        id: Id,
        words: Phrases,
        /** Never it, although it holds such words. */
        never: z.array(z.string().min(1)).default([]),
      }),
    )
    .min(1),
});
export type Call = z.infer<typeof Call>;

/** What decides which questions a short call asks. */
export const ShortCall = z.strictObject({
  /** Asked before all others, in this order. */
  first: z.array(Id).default([]),
  /** How the worths were worked out. */
  basis: z.string().min(3),
  /**
   * question id -> how often a house's first three jobs would be others if its answer were not known, among houses
   * that are asked it
   */
  worth: z.record(z.string(), z.number().min(0).max(1)),
});
export type ShortCall = z.infer<typeof ShortCall>;

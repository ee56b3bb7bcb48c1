import * as z from 'zod';
import { Action, Caution, Cost, Upkeep } from './action.ts';
import { Id, Text } from './base.ts';
import { Call, ShortCall } from './call.ts';
import { Element, Finding, WayIn } from './finding.ts';
import { Group, Question } from './question.ts';
import { Rulebook, Source } from './rulebook.ts';
import { Words } from './words.ts';

const Level = z.strictObject({ value: z.number(), low: z.number(), high: z.number() });

/** A part of the walk. */
export const Stop = z.strictObject({
  id: Id,
  title: Text,
  /** Said on arriving: where to stand and what the stop is about. */
  arrive: Text,
  /** Where it stands in the small drawing of the house. */
  drawing: z.enum([
    'about',
    'roof',
    'eaves',
    'vents',
    'siding',
    'openings',
    'zone0',
    'trees',
    'fences',
    'outbuildings',
    'zone1',
  ]),
  words: z.array(z.string()).default([]),
});
export type Stop = z.infer<typeof Stop>;

export const Walk = z.strictObject({
  id: Id,
  title: Text,
  language: z.string(),
  generalRulebook: Id,
  stops: z.array(Stop).min(1),
  /** The named levels of readiness, with their usual ranges. */
  levels: z.strictObject({ rarely: Level, seldom: Level, sometimes: Level, often: Level, readily: Level }),
  /** A trade job is advised only while a way in that it closes weighs at least this. */
  tradeFloor: z.number().positive(),
  /** Shares are said in these words, from the largest down. */
  shareWords: z.array(z.strictObject({ atLeast: z.number().min(0).max(1), say: z.string() })).min(2),
});
export type Walk = z.infer<typeof Walk>;

/** What one flow file may hold; a file holds what belongs together, in any of these parts. */
export const FlowFile = z.strictObject({
  walk: Walk.optional(),
  groups: z.array(Group).optional(),
  /** The stop to which the questions of this file belong. */
  stop: Id.optional(),
  questions: z.array(Question).optional(),
  findings: z.array(Finding).optional(),
  elements: z.array(Element).optional(),
  sets: z.record(Id, z.array(Id).min(1)).optional(),
  waysIn: z.array(WayIn).optional(),
  actions: z.array(Action).optional(),
  cautions: z.array(Caution).optional(),
  costs: z.array(Cost).optional(),
  upkeep: z.array(Upkeep).optional(),
  sources: z.array(Source).optional(),
  rulebook: Rulebook.optional(),
  words: Words.optional(),
  call: Call.optional(),
  shortCall: ShortCall.optional(),
  /** phrase id -> text that the program says outside questions */
  phrases: z.record(z.string(), Text).optional(),
});
export type FlowFile = z.infer<typeof FlowFile>;

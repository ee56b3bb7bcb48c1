import * as z from 'zod';
import { Id, Quantity, Text } from '../../flow/schema/base.ts';
import { Condition } from '../../flow/schema/condition.ts';

const Phrases = z.array(z.string().min(1));
const ById = z.record(z.string(), Phrases);

export const temperNames = ['plain', 'exaggerates', 'unsure', 'pushes-back'] as const;
/** How the played resident talks. */
export type Temper = (typeof temperNames)[number];

export const verbNames = [
  'go',
  'next',
  'back',
  'look',
  'ask',
  'wonder',
  'find',
  'takeBack',
  'advise',
  'caution',
  'tell',
  'hint',
  'findings',
  'advised',
  'where',
  'firstPage',
  'done',
  'help',
  'pause',
  'everything',
] as const;
export type VerbName = (typeof verbNames)[number];

const Level = z.strictObject({
  /** Weight of an answer that is a finding, against its usual weight. */
  telling: z.number().positive(),
  /** How many findings at their places a house has; one with more or fewer is drawn again. */
  findings: z.strictObject({ atLeast: z.number().int().min(0), atMost: z.number().int().min(1) }).optional(),
  /** How often a measure is drawn close to its limit. */
  near: z.number().min(0).max(1),
  /** How often a measure is drawn well clear of its limit. */
  clear: z.number().min(0).max(1).default(0),
  /** Things are told as they look, not by the names of the choices. */
  subtle: z.boolean(),
  distractors: z.number().int().min(0),
  /** Which distractors come first: those that look like a finding, those that do not, or any. */
  first: z.enum(['lookalikes', 'harmless', 'any']).default('any'),
  tempers: z.array(z.enum(temperNames)).min(1),
  /** How often a played alarm comes. */
  alarm: z.number().min(0).max(1),
});
export type Level = z.infer<typeof Level>;

const levelNames = ['easy', 'ordinary', 'hard'] as const;
export type LevelName = (typeof levelNames)[number];

/** How practice houses are made up. */
export const HouseRules = z.strictObject({
  fixed: z.record(Id, z.string()),
  counts: z.record(Id, z.array(z.number().min(0)).min(1)),
  levels: z.strictObject({ easy: Level, ordinary: Level, hard: Level }),
  consistent: z.array(
    z.strictObject({
      question: Id,
      never: z.array(z.string()).min(1),
      if: Condition,
    }),
  ),
  sides: z.array(
    z.strictObject({
      question: Id,
      value: z.string(),
      atLeast: z.number().int().min(0),
      atMost: z.number().int().min(1).optional(),
      if: Condition.optional(),
    }),
  ),
  lessThan: z.array(z.strictObject({ question: Id, than: Id })),
  near: z.record(Id, z.array(Quantity).min(1)),
  clear: z.record(Id, z.array(Quantity).min(1)).default({}),
  distractors: z.array(z.strictObject({ id: z.string(), stop: Id, looksLike: Id.optional() })),
  alarmStops: z.array(Id).min(1),
});
export type HouseRules = z.infer<typeof HouseRules>;

/** How a trainee speaks. */
export const TraineeWords = z.strictObject({
  verbs: z.record(z.enum(verbNames), Phrases.min(1)),
  same: z.array(Phrases.min(2)),
  /** Words for work: said first, a job is meant and no finding. */
  doing: Phrases.min(1),
  questions: ById,
  findings: ById,
  actions: ById,
  cautions: ById,
  askOnly: z.array(Id),
  promises: z.strictObject({ says: Phrases.min(1), denies: Phrases.min(1) }),
  unsafe: z.array(z.strictObject({ id: z.string(), words: Phrases.min(1), source: Id })),
  wrongAdvice: z.array(z.strictObject({ id: z.string(), words: Phrases.min(1), source: Id })),
  limits: z.record(Id, z.enum(['atLeast', 'atMost'])),
  leave: Phrases.min(1),
});
export type TraineeWords = z.infer<typeof TraineeWords>;

const CardBase = {
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  ask: Text,
  /** Said after the answer, right or wrong. */
  because: Text,
  source: Id,
  /** Where in the source: section, table or page. */
  where: z.string().min(1).optional(),
  /** What brings the card up when it goes wrong. */
  for: z.strictObject({
    findings: z.array(Id).default([]),
    actions: z.array(Id).default([]),
    cautions: z.array(Id).default([]),
    /** Wrong advice, promises, unsafe acts, and breaks of the order, by name. */
    faults: z.array(z.string()).default([]),
  }),
};

/** A fact to be kept in mind: a limit of the general rulebook, or one of some choices. */
export const Card = z.union([
  z.strictObject({ ...CardBase, limit: Id }),
  z.strictObject({
    ...CardBase,
    options: z.array(z.strictObject({ id: z.string(), label: Text })).min(2),
    right: z.string(),
  }),
]);
export type Card = z.infer<typeof Card>;

/** What one practice file may hold. */
export const PracticeFile = z.strictObject({
  house: HouseRules.optional(),
  words: TraineeWords.optional(),
  cards: z.array(Card).optional(),
  phrases: z.record(z.string(), Text).optional(),
});
export type PracticeFile = z.infer<typeof PracticeFile>;

/** All practice files together. */
export interface PracticeContent {
  readonly house: HouseRules;
  readonly words: TraineeWords;
  readonly cards: readonly Card[];
  readonly phrases: Readonly<Record<string, Text>>;
}

import type * as z from 'zod';
import type { Action, Caution, Cost, Upkeep } from './schema/action.ts';
import type { Text } from './schema/base.ts';
import type { Call, ShortCall } from './schema/call.ts';
import type { Stop, Walk } from './schema/file.ts';
import type { Element, Finding, WayIn } from './schema/finding.ts';
import type { Group, Question as RawQuestion } from './schema/question.ts';
import type { Rulebook, Source } from './schema/rulebook.ts';
import type { Words } from './schema/words.ts';

/** A question, with the stop it belongs to. */
export type Question = z.infer<typeof RawQuestion> & { readonly stop: string };

export type QuestionKind = Question['kind'];

/** Everything a walk is made of: checked, plain data, as JSON between build and start. */
export interface Flow {
  readonly walk: z.infer<typeof Walk>;
  readonly stops: readonly Stop[];
  readonly groups: readonly z.infer<typeof Group>[];
  /** In the order in which they are asked. */
  readonly questions: readonly Question[];
  readonly findings: readonly Finding[];
  readonly elements: readonly Element[];
  /** Named alternatives for a link: set id -> element ids. */
  readonly sets: Readonly<Record<string, readonly string[]>>;
  readonly waysIn: readonly WayIn[];
  readonly actions: readonly Action[];
  readonly cautions: readonly Caution[];
  readonly costs: readonly Cost[];
  readonly upkeep: readonly Upkeep[];
  readonly sources: readonly Source[];
  readonly rulebooks: readonly Rulebook[];
  /** language -> its words */
  readonly words: Readonly<Record<string, Words>>;
  /** What is said and heard in a call that a volunteer guides; without it nobody is guided. */
  readonly call?: Call;
  readonly shortCall?: ShortCall;
  /** phrase id -> text that is said outside questions */
  readonly phrases: Readonly<Record<string, Text>>;
  /** Changes whenever anything above changes. */
  readonly fingerprint: string;
}

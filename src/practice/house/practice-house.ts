import type { AnswerSheet } from '../../answers/answer.ts';
import type { LevelName, Temper } from '../schema/practice-file.ts';

/** A house to practise on, with everything the program plays. Plain data, kept with the session. */
export interface PracticeHouse {
  /** Shown and exported: `seed-41` or the name of a file. */
  readonly name: string;
  readonly sheet: AnswerSheet;
  readonly level: LevelName;
  readonly temper: Temper;
  /** stop id -> distractors met there */
  readonly distractors: Readonly<Record<string, readonly string[]>>;
  /** The stop at which the resident plays an alarm. */
  readonly alarmAt?: string;
  /** A supervisor's own list of findings; without it the findings of the answers are the key. */
  readonly key?: readonly string[];
  /** Draws what is left open while the house is played. */
  readonly seed: number;
}

import type { Debrief } from './debrief/debrief.ts';
import type { QuestionRound } from './memory/question-turn.ts';
import type { CardMemory } from './memory/schedule.ts';
import type { PracticeState } from './session/state.ts';

/** A session that was ended, with what was said about it. */
export interface EndedSession {
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  readonly endedAt: string;
  readonly debrief: Debrief;
}

/** All that is kept of one trainee on this machine. */
export interface TraineeProgress {
  readonly version: 1;
  /** As the trainee wrote it. */
  readonly trainee: string;
  /** The trainee agreed that a supervisor may export the debriefs. */
  readonly consent: boolean;
  readonly sessions: readonly EndedSession[];
  readonly cards: Readonly<Record<string, CardMemory>>;
  /** A session that is not finished. */
  readonly open?: PracticeState;
  readonly round?: QuestionRound;
  /** Counts up with each save. */
  readonly revision: number;
}

/** A trainee of whom nothing is kept yet. */
export function newProgress(trainee: string): TraineeProgress {
  return { version: 1, trainee, consent: false, sessions: [], cards: {}, revision: 0 };
}

/** Where progress is kept. A save that returned `saved` survives `kill -9` and a power cut. */
export interface ProgressStore {
  readonly load: (trainee: string) => Promise<TraineeProgress | undefined>;
  /** `conflict`: another program saved in between; nothing was written. */
  readonly save: (progress: TraineeProgress) => Promise<'saved' | 'conflict'>;
  readonly list: () => Promise<readonly TraineeProgress[]>;
  readonly remove: (trainee: string) => Promise<boolean>;
}

import { createEmptyCard, type Card as FsrsCard, fsrs, type Grade, Rating } from 'ts-fsrs';

/** What is remembered of a card: the state of the scheduler, dates as ISO 8601. */
export interface CardMemory {
  readonly due: string;
  readonly stability: number;
  readonly difficulty: number;
  readonly elapsedDays: number;
  readonly scheduledDays: number;
  readonly learningSteps: number;
  readonly reps: number;
  readonly lapses: number;
  readonly state: number;
  readonly lastReview?: string;
}

/** How an answer went: wrong, right with help, right. */
export type Recall = 'again' | 'hard' | 'good';

/** Without fuzz, so that the same answers give the same dates. */
const scheduler = fsrs({ enable_fuzz: false });

const grades: Readonly<Record<Recall, Grade>> = { again: Rating.Again, hard: Rating.Hard, good: Rating.Good };

function toMemory(card: FsrsCard): CardMemory {
  return {
    due: card.due.toISOString(),
    stability: card.stability,
    difficulty: card.difficulty,
    elapsedDays: card.elapsed_days,
    scheduledDays: card.scheduled_days,
    learningSteps: card.learning_steps,
    reps: card.reps,
    lapses: card.lapses,
    state: card.state,
    ...(card.last_review ? { lastReview: card.last_review.toISOString() } : {}),
  };
}

function toCard(memory: CardMemory): FsrsCard {
  return {
    due: new Date(memory.due),
    stability: memory.stability,
    difficulty: memory.difficulty,
    elapsed_days: memory.elapsedDays,
    scheduled_days: memory.scheduledDays,
    learning_steps: memory.learningSteps,
    reps: memory.reps,
    lapses: memory.lapses,
    state: memory.state,
    ...(memory.lastReview === undefined ? {} : { last_review: new Date(memory.lastReview) }),
  };
}

/** A card that is asked for the first time, due at once. */
export function newMemory(now: Date): CardMemory {
  return toMemory(createEmptyCard(now));
}

/** The card after an answer, with the day on which it comes back. */
export function reviewed(memory: CardMemory, now: Date, recall: Recall): CardMemory {
  return toMemory(scheduler.next(toCard(memory), now, grades[recall]).card);
}

/** Cards that are due, the longest overdue first, ties by id. */
export function dueCards(cards: Readonly<Record<string, CardMemory>>, now: Date): string[] {
  return Object.entries(cards)
    .filter(([, memory]) => new Date(memory.due).getTime() <= now.getTime())
    .sort(([a, one], [b, other]) => one.due.localeCompare(other.due) || a.localeCompare(b))
    .map(([id]) => id);
}

/** Facts that went wrong: new ones are due at once, known ones count as forgotten now. */
export function withMissed(
  cards: Readonly<Record<string, CardMemory>>,
  ids: readonly string[],
  now: Date,
): Record<string, CardMemory> {
  const next = { ...cards };
  for (const id of ids) {
    const known = next[id];
    next[id] = known ? reviewed(known, now, 'again') : newMemory(now);
  }
  return next;
}

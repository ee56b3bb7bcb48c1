import type { Message } from '../../conversation/message.ts';
import { say } from '../../conversation/turned.ts';
import { makeDebrief } from '../../practice/debrief/make-debrief.ts';
import { missedCards } from '../../practice/memory/missed-cards.ts';
import { newRound, questionTurn } from '../../practice/memory/question-turn.ts';
import { dueCards, withMissed } from '../../practice/memory/schedule.ts';
import type { Practice } from '../../practice/practice.ts';
import type { ProgressStore, TraineeProgress } from '../../practice/progress.ts';
import { practiceTurn } from '../../practice/session/practice-turn.ts';
import type { PracticeState } from '../../practice/session/state.ts';
import type { TerminalConversation, Turn } from '../../terminal/ports.ts';
import { ProgramError } from '../program-error.ts';
import { practiceWording } from './load-practice.ts';
import { type Shown, toTurn } from './to-turn.ts';

/** What a practice conversation needs from outside. */
export interface PracticeShell {
  readonly practice: Practice;
  readonly store: ProgressStore;
  readonly clock: () => Date;
}

/** Saves before anything is shown. */
async function keep(store: ProgressStore, progress: TraineeProgress): Promise<TraineeProgress> {
  const next = { ...progress, revision: progress.revision + 1 };
  if ((await store.save(next)) === 'saved') return next;
  throw new ProgramError(
    'Another practice of the same trainee was saved in between. Close it, then start again.',
    1,
  );
}

const phases = {
  walking: 'asking',
  firstPage: 'asking',
  debriefed: 'finished',
  emergency: 'emergency',
  paused: 'paused',
} as const;

/** A session that ended: its debrief is kept, and what went wrong comes back as questions. */
function withEnded(
  practice: Practice,
  progress: TraineeProgress,
  state: PracticeState,
  now: Date,
): TraineeProgress {
  const debrief = makeDebrief(practice, state);
  const ended = { startedAt: state.startedAt, endedAt: now.toISOString(), debrief };
  const { open: _, ...rest } = progress;
  return {
    ...rest,
    sessions: [...progress.sessions, ended],
    cards: withMissed(progress.cards, missedCards(practice, debrief), now),
  };
}

/** A walk at the practice house; every turn is kept before it is shown. */
export function practiceConversation(
  shell: PracticeShell,
  before: TraineeProgress,
  start: PracticeState,
): TerminalConversation {
  const { practice, store, clock } = shell;
  const wording = practiceWording(practice, start.house.sheet);
  let progress = before;
  let state = start;
  const turn = async (message: Message): Promise<Turn> => {
    const now = clock();
    const { state: next, reply } = practiceTurn(practice, state, message);
    const ended = next.phase === 'debriefed' && state.phase !== 'debriefed';
    progress = await keep(
      store,
      ended
        ? withEnded(practice, progress, next, now)
        : next.phase === 'debriefed'
          ? progress
          : { ...progress, open: next },
    );
    state = next;
    const due = ended ? dueCards(progress.cards, now).length : 0;
    const shown: Shown = {
      parts: due > 0 ? [...reply.parts, say('practice.questions.due', { count: due }, 'quiet')] : reply.parts,
      choices: reply.choices,
      phase: phases[next.phase],
      stop: reply.stop,
      visited: new Set(next.events.flatMap((event) => (event.kind === 'went' ? [event.stop] : []))),
      revision: reply.revision,
      prompt: promptOf(next, reply.choices.length > 0),
    };
    return toTurn(practice, wording, shown);
  };
  return { hello: () => turn({ kind: 'hello' }), send: turn };
}

function promptOf(state: PracticeState, choices: boolean): Shown['prompt'] {
  if (state.phase !== 'walking' && state.phase !== 'firstPage') return undefined;
  return choices
    ? { say: 'practice.prompt.which', hint: 'practice.hint.which' }
    : { say: 'practice.prompt', hint: 'practice.hint.prompt' };
}

/** The questions that are due; every answer is kept before the next question is shown. */
export function questionConversation(shell: PracticeShell, before: TraineeProgress): TerminalConversation {
  const { practice, store, clock } = shell;
  const wording = practiceWording(practice, {});
  let progress = before;
  let round = newRound(practice, before.cards, clock());
  const turn = async (message: Message): Promise<Turn> => {
    const turned = questionTurn(practice, round, progress.cards, message, clock());
    progress = await keep(store, { ...progress, cards: turned.cards });
    round = turned.round;
    return toTurn(practice, wording, {
      parts: turned.parts,
      choices: turned.choices,
      phase: round.phase,
      stop: undefined,
      visited: new Set(),
      revision: progress.revision,
      prompt:
        round.phase === 'asking'
          ? { say: 'practice.prompt.answer', hint: 'practice.hint.answer' }
          : undefined,
    });
  };
  return { hello: () => turn({ kind: 'hello' }), send: turn };
}

import { readMessage } from '../../src/answers/reading/read-message.ts';
import type { Answer } from '../../src/answers/answer.ts';
import type { Programme } from '../../src/conversation/programme.ts';
import type { Question } from '../../src/flow/flow.ts';
import { sideNames } from '../../src/flow/schema/base.ts';

/** What the hand-written reducer keeps: the least from which the same conversation can go on. */
interface Kept {
  readonly sheet: Readonly<Record<string, Answer>>;
  readonly next: number;
}

/**
 * A turn as one would write it by hand for a fixed list of questions: reads the same message with the same reader, puts
 * the answer into a copy, moves to the next question of the list, and saves the same answers as JSON. No branches, no
 * groups, no machine, no progress.
 */
export function reducerFor(programme: Programme, asked: readonly Question[]): (stored: string, text: string) => string {
  const { flow } = programme.checklist;
  const words = flow.words[flow.walk.language];
  if (!words) throw new Error('The flow has no words in its own language.');
  return (stored, text) => {
    const { sheet, next }: Kept = JSON.parse(stored);
    const question = asked[next];
    if (!question) return stored;
    const reading = readMessage(text, {
      question,
      words,
      stops: flow.stops,
      questions: flow.questions,
      groups: flow.groups,
      sides: question.by === 'side' ? sideNames : [],
      units: 'imperial',
      members: [],
    });
    if (reading.kind !== 'answer') return stored;
    const after: Kept = { sheet: { ...sheet, [question.id]: reading.answer }, next: next + 1 };
    return JSON.stringify(after);
  };
}

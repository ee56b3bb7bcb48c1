import type { Ask, Choice, Part, Progress } from '../../conversation/message.ts';
import type { Practice } from '../../practice/practice.ts';
import type { PracticeTurned } from '../../practice/session/turned.ts';
import type { Turn } from '../../terminal/ports.ts';
import { wordReply } from '../../wording/word-reply.ts';
import type { WordedBlock } from '../../wording/worded.ts';
import type { Wording } from '../../wording/wording.ts';

/** What a practice turn shows in the terminal. */
export interface Shown {
  readonly parts: readonly Part[];
  readonly choices: NonNullable<PracticeTurned['choices']>;
  readonly phase: Turn['phase'];
  readonly stop: string | undefined;
  readonly visited: ReadonlySet<string>;
  readonly revision: number;
  /** Phrase ids of the prompt and of the line on how to answer; no prompt once it is over. */
  readonly prompt: { readonly say: string; readonly hint: string } | undefined;
}

const letters = 'abcdefghijklmnopqrstuvwxyz';

function askOf(shown: Shown): Ask | undefined {
  if (!shown.prompt) return undefined;
  const choices = shown.choices.map(
    ({ id, label }, position): Choice => ({
      id,
      label,
      number: position + 1,
      letter: letters[position] ?? '',
    }),
  );
  return {
    key: 'practice',
    question: 'practice',
    kind: choices.length > 0 ? 'choice' : 'text',
    say: { text: shown.prompt.say },
    choices,
    several: false,
    sides: [],
    hint: { text: shown.prompt.hint },
  };
}

function progressOf(practice: Practice, { stop, visited }: Shown): Progress {
  const stops = practice.programme.checklist.flow.stops.map(({ id }) => ({
    id,
    title: `stop/${id}/title`,
    state: id === stop ? ('here' as const) : visited.has(id) ? ('done' as const) : ('ahead' as const),
  }));
  return { stop, stops, answered: visited.size, asked: stops.length };
}

/** Lines of one tone stand together: a debrief is read as paragraphs, not as forty of them. */
function joined(blocks: readonly WordedBlock[]): WordedBlock[] {
  const list: WordedBlock[] = [];
  for (const block of blocks) {
    const before = list.at(-1);
    if (
      before?.kind === 'say' &&
      block.kind === 'say' &&
      before.tone === block.tone &&
      block.tone !== 'heading'
    )
      list[list.length - 1] = { ...before, lines: [...before.lines, ...block.lines] };
    else list.push(block);
  }
  return list;
}

/** A practice turn in words, as the terminal shows every conversation. */
export function toTurn(practice: Practice, wording: Wording, shown: Shown): Turn {
  const ask = askOf(shown);
  const { blocks, ...rest } = wordReply({ parts: shown.parts, ...(ask ? { ask } : {}) }, wording);
  const worded = { ...rest, blocks: joined(blocks) };
  const drawing = practice.programme.checklist.flow.stops.find((one) => one.id === shown.stop)?.drawing;
  return {
    worded,
    phase: shown.phase,
    progress: progressOf(practice, shown),
    revision: shown.revision,
    ...(ask ? { ask } : {}),
    ...(drawing ? { drawing } : {}),
  };
}

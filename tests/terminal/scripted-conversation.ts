import type { Message } from '../../src/conversation/message.ts';
import type { Phrase, TerminalConversation, Turn } from '../../src/terminal/ports.ts';
import type { WordedBlock } from '../../src/wording/worded.ts';

export interface ScriptedQuestion {
  readonly question: string;
  readonly choices?: readonly string[];
  readonly several?: boolean;
  readonly hint?: string;
  readonly stop?: string;
}

export interface Script {
  readonly questions: readonly ScriptedQuestion[];
  readonly report?: string;
}

export const stopIds: readonly string[] = [
  'about',
  'roof',
  'eaves',
  'vents',
  'siding',
  'openings',
  'zone0',
  'trees',
  'fences',
];

/** A conversation without rules: any answer brings the next question; "stop", "fire" and the last one end it. */
export function scriptedConversation(
  script: Script,
): TerminalConversation & { readonly sent: readonly Message[] } {
  const sent: Message[] = [];
  let position = 0;
  const send = async (message: Message): Promise<Turn> => {
    sent.push(message);
    const text = message.kind === 'text' ? message.text : message.kind === 'choose' ? message.option : '';
    if (text === 'stop')
      return end('paused', [{ kind: 'say', tone: 'plain', lines: ['Paused as you said.'] }]);
    if (text === 'fire') return end('emergency', [{ kind: 'say', tone: 'emergency', lines: ['Leave now.'] }]);
    if (text === 'break') throw new Error('the disk is full');
    position += 1;
    const noted: WordedBlock = { kind: 'say', tone: 'plain', lines: [`Noted: ${text}`] };
    if (position < script.questions.length) return asking(script, position, [noted]);
    const report = script.report ?? 'THE LIST\n  1. Rake the bark away';
    const place: WordedBlock = { kind: 'report', tone: 'plain', lines: [] };
    const after: WordedBlock = { kind: 'say', tone: 'quiet', lines: ['Local code decides.'] };
    return { ...end('finished', [noted, place, after]), report };
  };
  const opening: WordedBlock = { kind: 'say', tone: 'heading', lines: ['A walk round one house'] };
  return { sent, hello: async () => asking(script, 0, [opening]), send };
}

function end(phase: Turn['phase'], blocks: readonly WordedBlock[]): Turn {
  return { worded: { blocks }, phase, progress: progressAt(undefined, 0), revision: 99 };
}

function asking(script: Script, position: number, blocks: readonly WordedBlock[]): Turn {
  const asked = script.questions[position];
  if (!asked) throw new Error(`the script has no question ${position}`);
  const choices = (asked.choices ?? []).map((label, index) => ({
    id: `o${index + 1}`,
    number: index + 1,
    letter: String.fromCharCode(97 + index),
    label,
  }));
  const several = asked.several ?? false;
  return {
    worded: { blocks, ask: { question: asked.question, choices, several, hint: asked.hint ?? '' } },
    phase: 'asking',
    progress: progressAt(asked.stop ?? stopIds[position % stopIds.length], position),
    revision: position + 1,
    ask: {
      key: `q${position}`,
      question: `q${position}`,
      kind: several ? 'several' : choices.length > 0 ? 'choice' : 'text',
      say: { text: 'x' },
      choices: choices.map((choice) => ({ ...choice, label: { text: 'x' } })),
      several,
      sides: [],
      hint: { text: 'x' },
    },
  };
}

function progressAt(stop: string | undefined, answered: number): Turn['progress'] {
  const at = stop === undefined ? -1 : stopIds.indexOf(stop);
  const stops = stopIds.map((id, index) => ({
    id,
    title: `stop/${id}/title`,
    state: index === at ? ('here' as const) : index < at ? ('done' as const) : ('ahead' as const),
  }));
  return { stop, stops, answered, asked: 50 };
}

const phrases: Readonly<Record<string, string>> = {
  'terminal.paused': 'Stopped here. Your answers are kept. Start roofdown again and it offers to go on.',
  'terminal.place': '{title} ({number} of {total})',
  'terminal.keys.text': 'Type your answer, then Enter.',
  'terminal.keys.choices': 'Type it, or arrow keys and Enter.',
  'terminal.keys.several': 'Type, or arrows, Space and Enter.',
  'terminal.more-above': '{count} more above',
  'terminal.more-below': '{count} more below',
};

/** Says the phrases of the terminal in English; the title of a stop is its id with a capital. */
export const scriptedPhrase: Phrase = (id, values = {}) => {
  const stop = /^stop\/(.+)\/title$/u.exec(id)?.[1];
  if (stop) return stop.charAt(0).toUpperCase() + stop.slice(1);
  const text = phrases[id];
  if (text === undefined) throw new Error(`no phrase ${id}`);
  return text.replaceAll(/\{(\w+)\}/gu, (_, name: string) => String(values[name]));
};

const materials = [
  'Composition shingle, the usual flat or layered asphalt kind',
  'Clay or concrete tile',
  'Metal panels or metal shingles',
  'Wood shake or wood shingle',
  'Something else, or several kinds next to each other on different parts of the roof',
  'Slate',
  'Built-up roof with gravel, nearly flat',
  'Solar shingles',
  'Not sure (it cannot be seen from the ground)',
];

/** 50 long questions: single choice, several, and free text in turn. */
export const longScript: Script = {
  questions: Array.from({ length: 50 }, (_, n) => ({
    question:
      `Question ${n + 1}: stand back, across the street or at the far end of the yard, where you can see all of it, ` +
      'and say what it is covered with; where parts differ, take the one that would catch fire most easily.',
    choices: n % 3 === 2 ? [] : materials,
    several: n % 3 === 1,
    hint: 'A number, a letter, or your own words. "Not sure" and "skip" are fine too.',
  })),
  report: `THE LIST\n${Array.from({ length: 30 }, (_, n) => `  ${n + 1}. Do job ${n + 1}`).join('\n')}`,
};

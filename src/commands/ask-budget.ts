import type { Message } from '../conversation/message.ts';
import { readFor } from '../conversation/read.ts';
import { readYesNo } from '../conversation/read-yes-no.ts';
import type { WalkId } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { Limits } from '../planning/budget-plan.ts';
import type { TerminalConversation, Turn } from '../terminal/ports.ts';
import { wordingFor } from './wording-for.ts';

const number = '(\\d[\\d,]*(?:\\.\\d+)?)';
const hoursSaid = new RegExp(`${number}\\s*(?:h|hrs?|hours?)\\b`, 'i');
const moneySaid = new RegExp(`(?:[$€£]\\s*)?${number}(?!\\s*(?:h|hrs?|hours?)\\b)`, 'i');

/** Money and hours out of what was typed, such as "$600 and 12 hours"; nothing when neither is there. */
export function readLimits(text: string): Limits | undefined {
  const amount = (match: RegExpExecArray | null) =>
    match?.[1] ? Number(match[1].replaceAll(',', '')) : undefined;
  const hours = amount(hoursSaid.exec(text));
  const money = amount(moneySaid.exec(text.replace(hoursSaid, ' ')));
  if (hours === undefined && money === undefined) return undefined;
  return { ...(money === undefined ? {} : { money }), ...(hours === undefined ? {} : { hours }) };
}

type Wording = ReturnType<typeof wordingFor>;

/** The question about money and hours, put at the end of the turn that showed the list. */
function asking(turn: Turn, wording: Wording): Turn {
  const hint = { text: 'budget.hint' };
  const say = { text: 'budget.ask' };
  return {
    ...turn,
    phase: 'readBack',
    worded: {
      ...turn.worded,
      ask: { question: wording.text(say.text), choices: [], several: false, hint: wording.text(hint.text) },
    },
    ask: {
      key: 'budget',
      question: 'budget',
      kind: 'text',
      say,
      choices: [],
      several: false,
      sides: [],
      hint,
    },
  };
}

function last(turn: Turn, line: string, report?: string): Turn {
  const { ask: _, report: __, ...rest } = turn;
  const blocks = [{ kind: 'say' as const, tone: 'plain' as const, lines: [line] }];
  return { ...rest, phase: 'finished', worded: { blocks }, ...(report === undefined ? {} : { report }) };
}

/**
 * A walk in the terminal does not end with the list: the person is asked what they can spend, and shown the jobs that
 * take most off within it. The walk itself is finished and kept by then.
 */
export function askBudget(
  shell: Shell,
  id: WalkId,
  inner: TerminalConversation,
  width: () => number,
): TerminalConversation {
  const { checklist } = shell.programme;
  let shown: Turn | undefined;
  const answer = async (turn: Turn, text: string): Promise<Turn> => {
    const record = await shell.store.load(id);
    if (!record) return last(turn, '');
    const wording = wordingFor(checklist, record);
    const limits = readLimits(text);
    const reading = readFor(checklist, record, undefined, text);
    if (!limits && reading.kind === 'emergency') return inner.send({ kind: 'text', text });
    if (!limits && reading.kind !== 'notUnderstood' && reading.kind !== 'answer')
      return inner.send({ kind: 'text', text });
    if (limits) {
      const size = { width: width(), extent: 'budget', limits } as const;
      const { makeReport } = await import('./make-report.ts');
      return last(
        turn,
        wording.text('budget.here'),
        makeReport(checklist, record, shell.clock(), 'text', size),
      );
    }
    const done =
      readYesNo(checklist, record, text) === 'no' || /^(?:skip|nothing|none|not sure)?$/i.test(text.trim());
    return done
      ? last(turn, wording.text('budget.none'))
      : asking({ ...last(turn, wording.text('budget.which')) }, wording);
  };
  const pass = async (message: Message): Promise<Turn> => {
    const turn = await inner.send(message);
    const record =
      turn.report !== undefined && turn.phase === 'finished' ? await shell.store.load(id) : undefined;
    if (!record || record.audience === 'volunteer') return turn;
    shown = asking(turn, wordingFor(checklist, record));
    return shown;
  };
  return {
    hello: inner.hello,
    send: async (message) => {
      const before = shown;
      if (!before || message.kind !== 'text') return pass(message);
      const turn = await answer(before, message.text);
      shown = turn.ask?.key === 'budget' ? turn : undefined;
      return turn;
    },
  };
}

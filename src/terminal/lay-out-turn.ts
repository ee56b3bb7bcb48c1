import type { WordedAsk, WordedBlock } from '../wording/worded.ts';
import type { Turn } from './ports.ts';
import { stripControl, stripToLine } from './strip-control.ts';
import { type Indent, wrapText } from './wrap-text.ts';

/** A row of text and how it is meant; looks only strengthen what the words and marks say already. */
export interface Row {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'quiet';
}

const blank: Row = { text: '', look: 'plain' };

const indents: Readonly<Record<WordedBlock['tone'], Indent>> = {
  plain: { first: '', rest: '' },
  heading: { first: '', rest: '' },
  quiet: { first: '', rest: '' },
  warning: { first: '! ', rest: '  ' },
  emergency: { first: '!!! ', rest: '    ' },
};

const looks: Readonly<Record<WordedBlock['tone'], Row['look']>> = {
  plain: 'plain',
  heading: 'strong',
  quiet: 'quiet',
  warning: 'strong',
  emergency: 'strong',
};

/** Everything that a turn says before its question, the report in its place. */
export function layOutBlocks(turn: Turn, width: number): readonly Row[] {
  const { blocks } = turn.worded;
  const report = turn.report === undefined ? [] : reportRows(turn.report);
  const placed = blocks.some((block) => block.kind === 'report');
  const rows = blocks.flatMap((block) => {
    if (block.kind === 'report') return report;
    return block.kind === 'readBack' ? readBackRows(block, width) : sayRows(block, width);
  });
  return placed ? rows : [...rows, ...report];
}

function sayRows(block: WordedBlock, width: number): readonly Row[] {
  const look = looks[block.tone];
  const texts = block.lines.flatMap((line) => wrapText(stripToLine(line), width, indents[block.tone]));
  return [blank, ...texts.map((text) => ({ text, look }))];
}

function readBackRows(block: WordedBlock, width: number): readonly Row[] {
  const [title = '', ...lines] = block.lines;
  const texts = lines.flatMap((line) => wrapText(stripToLine(line), width, { first: '  - ', rest: '    ' }));
  return [
    blank,
    ...wrapText(stripToLine(title), width).map((text): Row => ({ text, look: 'strong' })),
    ...texts.map((text): Row => ({ text, look: 'plain' })),
  ];
}

function reportRows(report: string): readonly Row[] {
  const lines = stripControl(report).replace(/\n+$/u, '').split('\n');
  return [blank, ...lines.map((text): Row => ({ text, look: 'plain' }))];
}

/** The question itself, a blank row before it. */
export function layOutQuestion(ask: WordedAsk, width: number): readonly Row[] {
  const texts = stripControl(ask.question)
    .split('\n')
    .flatMap((line) => wrapText(line, width));
  return [blank, ...texts.map((text): Row => ({ text, look: 'strong' }))];
}

/** The line on how to answer; no row when there is none. */
export function layOutHint(ask: WordedAsk, width: number): readonly Row[] {
  if (ask.hint === '') return [];
  return wrapText(stripToLine(ask.hint), width).map((text): Row => ({ text, look: 'quiet' }));
}

/** What a volunteer listens for, and does if the caller cannot tell; no row for anybody else. */
export function layOutGuide(ask: WordedAsk, width: number): readonly Row[] {
  if (!ask.guide) return [];
  return [ask.guide.listen, ask.guide.cannotTell].flatMap((text) =>
    wrapText(stripToLine(text), width, { first: '', rest: '  ' }).map(
      (line): Row => ({ text: line, look: 'plain' }),
    ),
  );
}

/** `1 (a)`: what a choice can be taken by, numbers set below each other; `(a)` where a number is a measure. */
export function choiceMark(choice: WordedAsk['choices'][number], total: number): string {
  if (choice.number === 0) return `(${choice.letter})`;
  return `${String(choice.number).padStart(String(total).length)} (${choice.letter})`;
}

/** The choices as a numbered list. */
export function layOutChoices(ask: WordedAsk, width: number): readonly Row[] {
  return ask.choices.flatMap((choice) => {
    const first = `  ${choiceMark(choice, ask.choices.length)} `;
    const indent = { first, rest: ' '.repeat(first.length) };
    return wrapText(stripToLine(choice.label), width, indent).map((text): Row => ({ text, look: 'plain' }));
  });
}

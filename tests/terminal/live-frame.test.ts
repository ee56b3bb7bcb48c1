import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../src/terminal/display-width.ts';
import { visibleItems } from '../../src/terminal/ink/choice-list.ts';
import { changeDraft, type Draft, emptyDraft, finishDraft } from '../../src/terminal/ink/draft.ts';
import { layOutLive, liveRowLimit } from '../../src/terminal/ink/live-frame.ts';
import type { Turn } from '../../src/terminal/ports.ts';
import { asciiSymbols, type Symbols, unicodeSymbols } from '../../src/terminal/symbols.ts';
import {
  longScript,
  type ScriptedQuestion,
  scriptedConversation,
  scriptedPhrase,
} from './scripted-conversation.ts';

async function firstTurn(question: ScriptedQuestion): Promise<Turn> {
  return scriptedConversation({ questions: [question] }).hello();
}

function lines(
  turn: Turn,
  columns: number,
  terminalRows: number,
  draft: Draft = emptyDraft,
  symbols: Symbols = unicodeSymbols,
) {
  const frame = layOutLive({ turn, draft, columns, terminalRows, phrase: scriptedPhrase, symbols });
  return {
    ...frame,
    texts: frame.rows.map((row) =>
      row
        .map((piece) => piece.text)
        .join('')
        .trimEnd(),
    ),
  };
}

const long = longScript.questions[0] ?? { question: '' };
const short = { question: 'Which?', choices: ['Bark', 'Leaves', 'Gravel'], stop: 'roof' };

describe('the live part', () => {
  it.each([
    [24, 5, 12],
    [24, 15, 8],
    [60, 5, 12],
    [10, 3, 6],
    [10, 8, 3],
    [6, 0, 4],
    [3, 0, 1],
    [1, 0, 1],
  ])('in %i rows below a question of %i takes at most %i', (terminalRows, above, most) => {
    expect(liveRowLimit(terminalRows, above)).toBe(most);
  });

  it('keeps its limits in every size, for every kind of question and wherever the pointer is', async () => {
    for (const question of [long, { ...long, several: true }, short, { question: 'How wide?' }]) {
      const turn = await firstTurn(question);
      for (const columns of [20, 39, 40, 72, 80, 200]) {
        for (const terminalRows of [3, 5, 8, 10, 16, 24, 60]) {
          for (const pointed of [undefined, 0, 4, 8]) {
            const { rows, texts, cursor } = lines(turn, columns, terminalRows, { ...emptyDraft, pointed });
            expect(rows.length).toBeLessThanOrEqual(Math.min(12, Math.max(1, terminalRows - 2)));
            for (const text of texts)
              expect(displayWidth(text)).toBeLessThan(Math.min(81, Math.max(columns, 20)));
            expect(cursor.y).toBe(rows.length - 1);
          }
        }
      }
    }
  });

  it('shows progress, the house with the stop filled, the choices, the keys, and the line at the end', async () => {
    const { texts } = lines(await firstTurn(short), 80, 24);
    expect(texts[0]).toBe('●▶○○○○○○○ Roof (2 of 9)');
    expect(texts[1]).toMatch(/^ {2}1 \(a\) Bark +█+/u);
    expect(texts[3]).toMatch(/^ {2}3 \(c\) Gravel +_\/_+/u);
    expect(texts.at(-2)).toBe('Type it, or arrow keys and Enter.');
    expect(texts.at(-1)).toBe('>');
  });

  it('sets the small drawing above the choices on a narrow screen', async () => {
    const { texts } = lines(await firstTurn(short), 40, 24);
    expect(texts[1]).toMatch(/^ +█+ +\/\\$/u);
    expect(texts[4]).toBe('  1 (a) Bark');
  });

  it('has nothing but ASCII with the symbols for it', async () => {
    for (const columns of [80, 40]) {
      const draft = { ...emptyDraft, pointed: 8, editor: { before: 'x'.repeat(200), after: 'y' } };
      const { texts } = lines(await firstTurn(long), columns, 24, draft, asciiSymbols);
      expect(texts.join('\n')).toMatch(/^[\n -~]+$/u);
    }
  });

  it('scrolls to the pointer and says how many choices are above and below', async () => {
    const turn = await firstTurn(long);
    const top = lines(turn, 40, 24).texts.join('\n');
    expect(top).toContain('1 (a)');
    expect(top).toMatch(/↓ \d more below/u);
    const bottom = lines(turn, 40, 24, { ...emptyDraft, pointed: 8 }).texts.join('\n');
    expect(bottom).toContain('❯ 9 (i) Not sure');
    expect(bottom).toMatch(/↑ \d more above$/mu);
    expect(bottom).not.toContain('1 (a)');
  });

  it('keeps the end of a long line in sight, with the cursor behind it', async () => {
    const draft = { ...emptyDraft, editor: { before: `${'long '.repeat(40)}end`, after: '' } };
    const { texts, cursor } = lines(await firstTurn(short), 40, 24, draft);
    expect(texts.at(-1)).toMatch(/^> ….*end$/u);
    expect(cursor.x).toBe(displayWidth(texts.at(-1) ?? ''));
    expect(cursor.x).toBeLessThan(40);
  });

  it('places the cursor by columns, not by characters', async () => {
    const draft = { ...emptyDraft, editor: { before: '屋👩‍👩‍👧e\u0301', after: 'x' } };
    expect(lines(await firstTurn(short), 80, 24, draft).cursor.x).toBe(2 + 2 + 2 + 1);
  });
});

describe('the choices in sight', () => {
  it.each([
    [[1, 1, 1, 1, 1], 0, 3, { first: 0, last: 2 }],
    [[1, 1, 1, 1, 1], 2, 3, { first: 0, last: 2 }],
    [[1, 1, 1, 1, 1], 3, 3, { first: 3, last: 4 }],
    [[2, 2, 2], 1, 3, { first: 1, last: 1 }],
    [[5, 1, 1], 0, 3, { first: 0, last: 0 }],
    [[1], 0, 1, { first: 0, last: 0 }],
  ])('of heights %j with %i pointed at, in %i rows', (heights, pointed, room, expected) => {
    expect(visibleItems(heights, pointed, room)).toEqual(expected);
  });
});

describe('an answer in the making', () => {
  const press = (turn: Turn, ...keys: readonly string[]) =>
    keys.reduce<Draft>((draft, key) => {
      const named =
        key === 'up' || key === 'down' || key === 'pageDown' || key === 'pageUp' || key === 'escape';
      return changeDraft(draft, turn, named ? { kind: key } : { kind: 'insert', text: key });
    }, emptyDraft);

  it('is the choice pointed at, sent with the revision that showed it', async () => {
    const turn = await firstTurn(short);
    expect(finishDraft(press(turn, 'down', 'down'), turn)).toEqual({
      message: { kind: 'choose', key: 'q0', option: 'o2', revision: 1 },
      said: 'Leaves',
    });
  });

  it('is what was typed, before anything pointed at', async () => {
    const turn = await firstTurn(short);
    expect(finishDraft(press(turn, 'down', 'tile', ' ', 'brown\u0007 '), turn)).toEqual({
      message: { kind: 'text', text: 'tile brown' },
      said: 'tile brown',
    });
  });

  it('is all that is marked, where several may be, in the order of the list', async () => {
    const turn = await firstTurn({ ...short, several: true });
    const draft = press(turn, 'down', 'down', 'down', ' ', 'up', ' ', 'up', ' ', ' ');
    expect(draft.marked).toEqual([1, 2]);
    expect(finishDraft(draft, turn)).toEqual({
      message: { kind: 'text', text: '2, 3' },
      said: 'Leaves; Gravel',
    });
  });

  it('is the one pointed at where several may be and none is marked', async () => {
    const turn = await firstTurn({ ...short, several: true });
    expect(finishDraft(press(turn, 'up'), turn)?.message).toEqual({ kind: 'text', text: '3' });
  });

  it('is nothing while nothing is typed or pointed at, so that Enter alone answers nothing', async () => {
    const turn = await firstTurn(short);
    expect(finishDraft(emptyDraft, turn)).toBeUndefined();
    expect(finishDraft(press(turn, '  '), turn)).toBeUndefined();
    expect(finishDraft(press(turn, 'down', 'x', 'escape'), turn)).toBeUndefined();
  });

  it('stays at the ends of the list', async () => {
    const turn = await firstTurn(short);
    expect(press(turn, 'up', 'up', 'up', 'up', 'up').pointed).toBe(0);
    expect(press(turn, 'pageDown', 'down').pointed).toBe(2);
    expect(press(await firstTurn({ question: 'How wide?' }), 'down').pointed).toBeUndefined();
  });
});

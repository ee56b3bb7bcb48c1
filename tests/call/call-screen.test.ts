import { describe, expect, it } from 'vitest';
import { wordingFor } from '../../src/commands/wording-for.ts';
import { displayWidth } from '../../src/terminal/display-width.ts';
import { changeDraft, type Draft, emptyDraft, stopLine } from '../../src/terminal/ink/draft.ts';
import { layOutLive } from '../../src/terminal/ink/live-frame.ts';
import { rowsToKeepInSight } from '../../src/terminal/ink/turn-rows.ts';
import type { Turn } from '../../src/terminal/ports.ts';
import { unicodeSymbols } from '../../src/terminal/symbols.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { realProgramme } from '../support/programme.ts';
import { day, walkWith } from '../support/walks.ts';
import { openCall, turnAt } from './call-for-tests.ts';

const { checklist } = realProgramme();

/** The turn that asks this question of a volunteer. */
function turnOf(key: string): Turn {
  const open = openCall(8);
  const { cursor } = walkWith(realProgramme(), {}, key);
  const { record, reply } = turnAt({ ...open, cursor }, 'where am i');
  if (!reply.ask) throw new Error(`${key} is not asked: ${JSON.stringify(record.cursor)}`);
  return {
    worded: wordReply(reply, wordingFor(checklist, record)),
    phase: reply.phase,
    progress: reply.progress,
    revision: reply.revision,
    call: { since: day.toISOString(), minutes: 8, stopKey: '!' },
    ...(reply.ask ? { ask: reply.ask } : {}),
  };
}

const wording = wordingFor(checklist, { sheet: {}, language: 'en', audience: 'volunteer' });

function rows(
  turn: Turn,
  columns: number,
  terminalRows: number,
  draft: Draft = emptyDraft,
  seconds = 0,
): string[] {
  const { rows: drawn } = layOutLive({
    turn,
    draft,
    columns,
    terminalRows,
    phrase: (id, values) => wording.text(id, values),
    symbols: unicodeSymbols,
    now: new Date(day.getTime() + seconds * 1000),
  });
  return drawn.map((row) => row.map((piece) => piece.text).join(''));
}

/** Everything that presses of Tab bring on the screen, one after another, until the choices are back. */
function allPages(turn: Turn, columns: number, terminalRows: number): string[] {
  const seen: string[] = [];
  let draft = emptyDraft;
  for (let press = 0; press < 12; press++) {
    seen.push(...rows(turn, columns, terminalRows, draft));
    draft = changeDraft(draft, turn, { kind: 'nextPage' });
  }
  return seen;
}

const houseQuestions = checklist.flow.questions
  .filter((one) => one.of === undefined && !one.when && !one.where)
  .map((one) => one.id);

describe('the screen of a call', () => {
  it('stays within 40 columns and 12 rows for every question, with all of the guide a few presses of Tab away', () => {
    expect(houseQuestions.length).toBeGreaterThan(25);
    for (const key of houseQuestions) {
      const turn = turnOf(key);
      for (const [columns, terminalRows] of [
        [40, 24],
        [40, 30],
        [80, 24],
      ] as const) {
        const seen = allPages(turn, columns, terminalRows);
        const words = seen.join(' ').replace(/\s+/gu, ' ');
        const last = turn.worded.ask?.guide?.cannotTell.split(' ').slice(-2).join(' ') ?? '';
        expect(words, `${key} at ${columns}`).toContain(last);
        expect(words).toContain('Listen for:');
        for (const row of seen) expect(displayWidth(row)).toBeLessThanOrEqual(columns);
        expect(rows(turn, columns, terminalRows).length).toBeLessThanOrEqual(12);
      }
    }
  });

  it('keeps what is to be said in sight above it in 24 rows of 40 columns', () => {
    for (const key of houseQuestions) {
      const turn = turnOf(key);
      const above = rowsToKeepInSight(turn, { width: 40, roomy: true });
      expect(above + rows(turn, 40, 24).length, key).toBeLessThanOrEqual(24);
    }
  });

  it('has a clock of minutes and seconds, with the limit', () => {
    const turn = turnOf('about.tenure');
    expect(rows(turn, 40, 24, emptyDraft, 187)[0]).toContain('3:07 of 8:00');
    const { minutes: _, ...call } = turn.call ?? { since: '', stopKey: '!' };
    expect(rows({ ...turn, call }, 40, 24, emptyDraft, 3601)[0]).toContain('60:01');
  });

  it('sends the stop key at once while nothing is typed, and as text otherwise', () => {
    const turn = turnOf('about.tenure');
    const key = { kind: 'insert', text: '!' } as const;
    expect(stopLine(emptyDraft, turn, key)).toEqual({ message: { kind: 'text', text: '!' }, said: '!' });
    const typing = changeDraft(emptyDraft, turn, { kind: 'insert', text: 'help' });
    expect(stopLine(typing, turn, key)).toBeUndefined();
    const { call: _, ...walk } = turn;
    expect(stopLine(emptyDraft, walk, key)).toBeUndefined();
  });
});

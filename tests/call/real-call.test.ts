import { fileURLToPath } from 'node:url';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { wordingFor } from '../../src/commands/wording-for.ts';
import type { TurnTaken } from '../../src/conversation/turn.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { buildProgram } from '../support/build-program.ts';
import { realProgramme } from '../support/programme.ts';
import { openTerminal, type RealTerminal } from '../terminal/real-terminal.ts';
import { newCall, turnAt } from './call-for-tests.ts';
import { demoHouses } from './houses.ts';
import { typedFor } from './scripted-caller.ts';

let program: string;
beforeAll(async () => {
  program = await buildProgram(fileURLToPath(new URL('./programs/short-call.ts', import.meta.url)));
});

let terminal: RealTerminal;
afterEach(() => terminal.kill('SIGKILL'));

const { checklist } = realProgramme();
const full = demoHouses(checklist).find((one) => one.name.startsWith('mill'))?.sheet ?? {};

/** What a turn ends with on the screen: the beginning of its question, or of what it says last. */
function lastWords({ record, reply }: TurnTaken): string {
  const { blocks, ask } = wordReply(reply, wordingFor(checklist, record));
  return (ask?.question ?? blocks.at(-1)?.lines.at(-1) ?? '').slice(0, 22);
}

const opening: Readonly<Record<string, string>> = {
  where: 'at home',
  ground: 'y',
  consent: 'y',
  number: 'skip',
};

function nextLine({ record, reply }: TurnTaken): string {
  const { pending } = record.cursor;
  if (pending?.kind === 'opening') return opening[pending.ask] ?? 'skip';
  return reply.ask ? typedFor(reply.ask, full) : 'yes';
}

describe.each([
  [40, 24],
  [80, 24],
])('a short call on a real terminal of %i by %i', (columns, rows) => {
  it('is finished by somebody who types what the caller says, and shows the stop line at one key', async () => {
    terminal = openTerminal(program, columns, rows);
    let turn = turnAt(newCall({ minutes: 8 }), { kind: 'hello' });
    for (let turns = 0; turns < 60 && turn.record.cursor.phase !== 'readBack'; turns++) {
      await terminal.until(lastWords(turn));
      if (turns === 7) {
        await terminal.settled();
        terminal.type('!');
        await terminal.until('READ OUT: "Please stop.');
      }
      const line = nextLine(turn);
      terminal.type(`${line}\r`);
      turn = turnAt(turn.record, line);
    }
    expect(turn.record.cursor.phase).toBe('readBack');
    await terminal.settled();
    expect(terminal.screen().some((row) => /\d:\d\d of 8:00/u.test(row))).toBe(true);
    terminal.type('yes\r');
    expect((await terminal.exited).exitCode).toBe(0);
    await terminal.settled();
    const all = terminal.everything().join('\n');
    for (const words of [
      'Text to copy and send',
      'Your house and wildfire',
      'READ OUT: "Nobody can',
      'end: finished',
    ])
      expect(all).toContain(words);
  }, 120_000);
});

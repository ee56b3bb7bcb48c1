import { cleanup, render } from 'ink-testing-library';
import { afterEach, describe, expect, it } from 'vitest';
import { WalkScreen } from '../../src/terminal/ink/components/walk-screen.tsx';
import { createSession } from '../../src/terminal/ink/session.ts';
import type { TerminalConversation } from '../../src/terminal/ports.ts';
import { unicodeSymbols } from '../../src/terminal/symbols.ts';
import { type Script, scriptedConversation, scriptedPhrase } from './scripted-conversation.ts';

afterEach(cleanup);

const script: Script = {
  questions: [
    { question: 'What is the roof?', choices: ['Tile', 'Metal', 'Shake'], stop: 'roof' },
    { question: 'What lies there?', choices: ['Bark', 'Leaves', 'Mats'], several: true, stop: 'zone0' },
    { question: 'How wide is the gap?', stop: 'eaves' },
  ],
};
const keys = { down: '\u001b[B', up: '\u001b[A', enter: '\r', backspace: '\u007f', escape: '\u001b' };

async function open(columns: number, conversation: TerminalConversation = scriptedConversation(script)) {
  const room = { width: columns - 1, roomy: true };
  const session = await createSession(conversation, () => room);
  const size = { columns, rows: 24 };
  const screen = { size: () => size, subscribe: () => () => undefined, noteFrame: () => undefined };
  const app = render(
    <WalkScreen
      session={session}
      screen={screen}
      phrase={scriptedPhrase}
      symbols={unicodeSymbols}
      colour={false}
    />,
  );
  const press = async (...chunks: readonly string[]) => {
    for (const chunk of ['', ...chunks]) {
      if (chunk !== '') app.stdin.write(chunk);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    return app.lastFrame() ?? '';
  };
  await press();
  return { app, session, press, shown: () => app.lastFrame() ?? '' };
}

describe.each([40, 100])('the interactive screen of %i columns', (columns) => {
  it('shows the question, where the walk is, and the choices', async () => {
    const { shown } = await open(columns);
    expect(shown()).toContain('What is the roof?');
    expect(shown()).toContain('Roof (2 of 9)');
    expect(shown()).toContain('1 (a) Tile');
    expect(shown()).toContain('███');
  });

  it('takes an answer typed letter by letter', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    expect(await press('t', 'i', 'l', 'e')).toContain('> tile');
    expect(await press(keys.enter)).toContain('Noted: tile');
    expect(conversation.sent).toEqual([{ kind: 'text', text: 'tile' }]);
  });

  it('takes a line pasted with its Enter in one piece', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    expect(await press('yes\r')).toContain('What lies there?');
    expect(conversation.sent).toEqual([{ kind: 'text', text: 'yes' }]);
  });

  it('takes several pasted lines one after the other, each for its question', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    await press('tile\rbark\r');
    expect(await press()).toContain('How wide is the gap?');
    expect(conversation.sent.map((message) => message.kind === 'text' && message.text)).toEqual([
      'tile',
      'bark',
    ]);
  });

  it('takes a choice by arrow keys and marks the one pointed at with more than looks', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    expect(await press(keys.down, keys.down)).toContain('❯ 2 (b) Metal');
    expect(await press(keys.enter)).toContain('> Metal');
    expect(conversation.sent).toEqual([{ kind: 'choose', key: 'q0', option: 'o2', revision: 1 }]);
  });

  it('takes several choices by Space', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    await press('tile\r');
    expect(await press(keys.down, ' ', keys.down, keys.down, ' ')).toContain('❯ [x] 3 (c) Mats');
    expect(await press(keys.enter)).toContain('> Bark; Mats');
    expect(conversation.sent.at(-1)).toEqual({ kind: 'text', text: '1, 3' });
  });

  it('takes back a whole emoji by one Backspace', async () => {
    const { press } = await open(columns);
    expect(await press('a👩‍👩‍👧')).toContain('> a👩‍👩‍👧');
    const after = await press(keys.backspace);
    expect(after).toMatch(/> a$/mu);
  });

  it('keeps keys pressed while an answer is on its way for the next question', async () => {
    const scripted = scriptedConversation(script);
    let release: () => void = () => undefined;
    const conversation: TerminalConversation = {
      hello: scripted.hello,
      send: async (message) => {
        await new Promise<void>((resolve) => {
          release = resolve;
        });
        return scripted.send(message);
      },
    };
    const { press } = await open(columns, conversation);
    expect(await press('tile\r', 'le', 'aves')).not.toContain('What lies there?');
    release();
    const next = await press();
    expect(next).toContain('What lies there?');
    expect(next).toMatch(/> leaves$/mu);
  });

  it('answers nothing by Enter alone', async () => {
    const conversation = scriptedConversation(script);
    const { press } = await open(columns, conversation);
    await press(keys.enter, ' ', keys.enter);
    expect(conversation.sent).toEqual([]);
  });
});

describe('leaving the interactive screen', () => {
  it('by Ctrl-C is a pause, and takes the live part off the screen', async () => {
    const { press, session } = await open(80);
    const last = await press('half an ans', '\u0003');
    expect(await session.ended).toEqual({ end: 'paused', lastTurn: undefined });
    expect(last).not.toContain('half an ans');
    expect(last).toContain('What is the roof?');
  });

  it('while an answer is on its way waits until it is kept', async () => {
    const scripted = scriptedConversation(script);
    const { press, session } = await open(80, scripted);
    await press('tile\r\u0003');
    expect(await session.ended).toEqual({ end: 'paused', lastTurn: undefined });
    expect(scripted.sent).toHaveLength(1);
  });

  it('by the words of the person or at the end hands back the last turn, to be printed', async () => {
    const { press, session } = await open(80);
    await press('fire\r');
    const ended = await session.ended;
    expect(ended.end).toBe('emergency');
    expect(ended.lastTurn?.worded.blocks[0]?.lines).toEqual(['Leave now.']);
  });

  it('by a fault of the conversation is an error, not an end', async () => {
    const { press, session } = await open(80);
    const ended = expect(session.ended).rejects.toThrow('the disk is full');
    await press('break\r');
    await ended;
  });
});

describe('text with control characters', () => {
  it('never reaches the screen as such', async () => {
    const hostile = { question: 'Roof\u001b[3J?', choices: ['Ti\u001b]0;x\u0007le'], hint: '\u009b2Jhint' };
    const { press } = await open(80, scriptedConversation({ questions: [hostile, hostile] }));
    const shown = await press('a\u0008\u009b3Jb\r');
    expect(shown).toContain('Roof?');
    expect(shown).toContain('1 (a) Tile');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be shown
    expect(shown.replaceAll(/\u001b\[\d+m/gu, '')).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/u);
    expect(shown).not.toContain('\u001b[3J');
  });
});

import { PassThrough, Readable, Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../src/terminal/display-width.ts';
import { runPlain } from '../../src/terminal/plain/run-plain.ts';
import type { TerminalConversation } from '../../src/terminal/ports.ts';
import { type Script, scriptedConversation, scriptedPhrase } from './scripted-conversation.ts';

const script: Script = {
  questions: [
    {
      question: 'What is the roof covered with? Stand back, across the street, and stay on the ground.',
      choices: ['Clay or concrete tile', 'Metal', 'Wood shake, which is split from a log and looks rough'],
      hint: 'A number, a letter or your own words.',
    },
    {
      question: 'How wide is the widest gap at the eave, measured from the ground with a long stick?',
      hint: 'A length.',
    },
  ],
};

class Collector extends Writable {
  text = '';
  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    this.text += chunk.toString('utf8');
    done();
  }
}

async function run(
  input: string | Readable,
  options: {
    columns?: number;
    echo?: boolean;
    conversation?: TerminalConversation;
    interrupted?: AbortSignal;
  } = {},
) {
  const output = new Collector();
  const conversation = options.conversation ?? scriptedConversation(script);
  const end = await runPlain({
    conversation,
    input: typeof input === 'string' ? Readable.from([Buffer.from(input)]) : input,
    output,
    phrase: scriptedPhrase,
    columns: () => options.columns ?? 80,
    echo: options.echo ?? true,
    ...(options.interrupted ? { interrupted: options.interrupted } : {}),
  });
  return { end, text: output.text };
}

describe('the plain terminal', () => {
  it('asks, reads a line, and goes on until the list', async () => {
    const { end, text } = await run('brown tile\n3mm\n');
    expect(end).toBe('finished');
    expect(text).toBe(`
A walk round one house

What is the roof covered with? Stand back, across the street, and stay on the
ground.
  1 (a) Clay or concrete tile
  2 (b) Metal
  3 (c) Wood shake, which is split from a log and looks rough
A number, a letter or your own words.

> brown tile

Noted: brown tile

How wide is the widest gap at the eave, measured from the ground with a long
stick?
A length.

> 3mm

Noted: 3mm

THE LIST
  1. Rake the bark away

Local code decides.
`);
  });

  it.each([40, 24, 80])('stays within %i columns', async (columns) => {
    const { text } = await run('tile\n3mm\n', { columns });
    for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThan(columns);
  });

  it('leaves the typed line alone where the screen shows it already', async () => {
    const { text } = await run('tile\n', { echo: false });
    expect(text).toContain('> \nNoted: tile');
  });

  it('pauses at the end of input with a word that answers are kept', async () => {
    const { end, text } = await run('tile\n');
    expect(end).toBe('paused');
    expect(text).toMatch(/> \n\nStopped here\. Your answers are kept\.[^>]+\n$/u);
  });

  it('takes a last line that has no line break, and lines that end in CR LF', async () => {
    const { end, text } = await run('tile\r\n3mm');
    expect(end).toBe('finished');
    expect(text).toContain('Noted: 3mm');
  });

  it('pauses when interrupted while it waits for a line', async () => {
    const interrupt = new AbortController();
    const input = new PassThrough();
    input.write('tile\n');
    setTimeout(() => interrupt.abort(), 30);
    const { end, text } = await run(input, { interrupted: interrupt.signal });
    expect(end).toBe('paused');
    expect(text).toContain('Noted: tile');
    expect(text).toContain('Your answers are kept');
  });

  it.each([
    ['stop', 'paused', 'Paused as you said.'],
    ['fire', 'emergency', '!!! Leave now.'],
  ])('ends at once when "%s" stops the walk', async (said, expected, last) => {
    const { end, text } = await run(`${said}\nnever read\n`);
    expect(end).toBe(expected);
    expect(text.trimEnd().endsWith(last)).toBe(true);
  });

  it('never writes a control character, whatever was typed or said', async () => {
    const conversation = scriptedConversation({
      questions: [
        { question: 'Which \u001b[31mroof\u0007?', choices: ['\u009b2Jtile'], hint: '\u001b]0;x\u0007hint' },
      ],
      report: 'LIST\u001b[3J\n  indented',
    });
    const { text } = await run('\u001b[2J\u0008tile\u0007\n', { conversation });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be written
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/u);
    expect(text).toContain('> tile\n');
    expect(text).toContain('LIST\n  indented');
  });

  it('passes on an error of the conversation, so that nothing seems kept that is not', async () => {
    await expect(run('break\n')).rejects.toThrow('the disk is full');
  });

  it('answers one line before it reads the next, however many arrive at once', async () => {
    const order: string[] = [];
    const scripted = scriptedConversation({
      questions: Array.from({ length: 30 }, (_, n) => ({ question: `Q${n}` })),
    });
    const conversation: TerminalConversation = {
      hello: scripted.hello,
      send: async (message) => {
        order.push('begin');
        await new Promise((resolve) => setTimeout(resolve, 1));
        order.push('end');
        return scripted.send(message);
      },
    };
    const lines = Array.from({ length: 30 }, (_, n) => `answer ${n}`);
    const { end } = await run(`${lines.join('\n')}\n`, { conversation });
    expect(end).toBe('finished');
    expect(scripted.sent).toEqual(lines.map((text) => ({ kind: 'text', text })));
    expect(order).toEqual(lines.flatMap(() => ['begin', 'end']));
  });
});

describe('a slow or absent reader of the plain terminal', () => {
  it('is waited for: no more than one reply is written ahead', async () => {
    const waiting: (() => void)[] = [];
    const output = new Writable({ highWaterMark: 1, write: (_chunk, _encoding, done) => waiting.push(done) });
    const conversation = scriptedConversation({
      questions: Array.from({ length: 20 }, () => ({ question: 'Q' })),
    });
    const input = Readable.from([Buffer.from('a\n'.repeat(20))]);
    const ended = runPlain({
      conversation,
      input,
      output,
      phrase: scriptedPhrase,
      columns: () => 80,
      echo: true,
    });
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(waiting).toHaveLength(1);
    expect(conversation.sent).toHaveLength(0);
    const pump = setInterval(() => waiting.shift()?.(), 0);
    expect(await ended).toBe('finished');
    clearInterval(pump);
  });

  it('that goes away ends the conversation as a pause', async () => {
    const output = new Writable({ write: (_chunk, _encoding, done) => done(new Error('EPIPE')) });
    const conversation = scriptedConversation(script);
    const input = Readable.from([Buffer.from('tile\n3mm\n')]);
    const options = { conversation, input, output, phrase: scriptedPhrase, columns: () => 80, echo: true };
    expect(await runPlain(options)).toBe('paused');
    expect(conversation.sent).toHaveLength(0);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../src/conversation/message.ts';
import { readTranscript } from '../support/transcript.ts';
import { channels, comparable, drive, phone, type Talk, talkOn } from './channel-contract.ts';

const webChannels = channels.filter((one) => one !== 'plain');

const asked = ({ replies }: Talk) => replies.at(-1)?.ask?.key;
const texts = (reply: Reply | undefined) =>
  (reply?.parts ?? []).map((part) => (part.kind === 'say' ? part.text : part.kind));

const folder = 'transcripts-demo';
const transcripts = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => [name, readTranscript(readFileSync(join(folder, name), 'utf8'))] as const)
  .filter(([, { command }]) => command[0] === 'walk' && !command.includes('--answers'));

describe('every transcript', () => {
  it.each(transcripts)('%s says the same on every channel', async (_, { typed }) => {
    const plain = comparable(await drive('plain', typed));
    expect(plain.length).toBe(typed.length + 1);
    for (const channel of webChannels) expect(comparable(await drive(channel, typed))).toEqual(plain);
  });
});

describe.each(channels)('a walk on %s', (channel) => {
  it('greets whoever arrives, takes answers, helps, goes back and pauses', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    expect(asked(talk)).toBe('about.danger');
    await talk.type('no');
    expect(asked(talk)).toBe('about.place');
    await talk.type('help');
    expect(texts(talk.replies.at(-1))).toContain('help.look');
    await talk.type('skip');
    await talk.type('back');
    expect(asked(talk)).toBe('about.place');
    await talk.type('pause');
    expect(talk.replies.at(-1)).toMatchObject({ phase: 'paused' });
    expect(await talk.store.list()).toMatchObject([{ phase: 'paused' }]);
    await talk.type('hello again');
    expect(asked(talk)).toBe('about.place');
  });

  it('stops for an emergency, also in the first words, and then asks whether the person is safe', async () => {
    const talk = talkOn(channel);
    if (channel === 'json') await talk.arrive();
    const said = await talk.type('there are flames behind the house');
    expect(said).toContain('LEAVE NOW');
    expect(talk.replies.at(-1)).toMatchObject({ phase: 'emergency' });
    await talk.type('tile roof');
    expect(texts(talk.replies.at(-1))).toEqual(['emergency.safe-now']);
    await talk.type('yes');
    expect(talk.replies.at(-1)?.phase).toBe('asking');
  });

  it('meets a word that may mean danger with one short question', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    await talk.type('I smell smoke maybe');
    expect(texts(talk.replies.at(-1))).toEqual(['emergency.is-it']);
    await talk.type('no');
    expect(asked(talk)).toBe('about.danger');
  });

  it('erases everything on request, asked once more, and nothing without', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    await talk.type('no');
    await talk.type('forget me');
    expect(texts(talk.replies.at(-1))).toEqual(['walk.forget-sure']);
    await talk.type('no');
    expect(await talk.store.list()).toHaveLength(1);
    await talk.type('forget me');
    await talk.type('yes');
    expect(texts(talk.replies.at(-1))).toEqual(['walk.forgotten']);
    expect(await talk.store.list()).toEqual([]);
  });
});

describe.each(webChannels)('the same message twice on %s', (channel) => {
  it('gets the same reply and counts once, also the last yes of an erased walk', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    for (const line of ['no', 'skip', 'forget me', 'yes']) {
      const said = await talk.type(line);
      expect(await talk.repeat()).toBe(said);
    }
    expect(talk.replies).toHaveLength(5);
    expect(await talk.store.list()).toEqual([]);
  });
});

describe.each(['json', 'telegram'] as const)('a late press on %s', (channel) => {
  it('changes the answer of its own question, says so, and stays at the question of now', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    await talk.type('no');
    const shown = talk.replies.at(-1);
    const options = shown?.ask?.choices.map((one) => one.id) ?? [];
    const press = (option: string | undefined) =>
      talk.press({
        kind: 'choose',
        key: 'about.place',
        option: option ?? '',
        revision: shown?.revision ?? 0,
      });
    await press(options[1]);
    const now = asked(talk);
    await press(options[2]);
    expect(texts(talk.replies.at(-1))).toContain('walk.late-edit');
    expect(asked(talk)).toBe(now);
    const [walk] = await talk.store.list();
    const kept = walk && (await talk.store.load(walk.id));
    expect(kept?.sheet['about.place']).toMatchObject({ status: 'given', value: options[2] });
  });
});

describe.each(webChannels)('a store that is away on %s', (channel) => {
  it('never keeps an order to leave from being said', async () => {
    const talk = talkOn(channel);
    await talk.arrive();
    const away = Object.assign(new Error('away'), { name: 'StorageError' });
    Object.assign(talk.site.shell.store, { load: () => Promise.reject(away) });
    expect(await talk.type('the roof is on fire')).toContain('LEAVE NOW');
    const answered = await talk.type('no').catch((error: Error) => error.message);
    expect(answered).toMatch(/may not have been kept|problems\/unavailable/);
    expect(JSON.stringify(talk.lines)).not.toContain(phone);
  });
});

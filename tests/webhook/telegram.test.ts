import { describe, expect, it } from 'vitest';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import { callbackData, readCallbackData } from '../../src/webhook/telegram/callback-data.ts';
import { realProgramme } from '../support/programme.ts';
import { talkOn, telegramRequest } from './channel-contract.ts';
import { openSettings, testSite } from './test-site.ts';

interface Sent {
  readonly method: string;
  readonly chat_id: number;
  readonly text: string;
  readonly reply_markup?: { inline_keyboard: { text: string; callback_data: string }[][] };
}
const sent = (text: string) => JSON.parse(text) as Sent;
const buttons = (one: Sent) => (one.reply_markup?.inline_keyboard ?? []).flat();

describe('a chat on Telegram', () => {
  it('gets its reply as a method in the body of the response, with a button for each choice', async () => {
    const talk = talkOn('telegram');
    const opening = sent(await talk.arrive());
    expect(opening).toMatchObject({ method: 'sendMessage', chat_id: 4242 });
    expect(buttons(opening).map((one) => one.text)).toEqual(['yes', 'no', 'Not sure', 'Skip']);
    expect(buttons(opening)[1]?.callback_data).toBe('1 about.danger no');
  });

  it('takes presses as answers, a late one as a change of its own question', async () => {
    const talk = talkOn('telegram');
    const opening = sent(await talk.arrive());
    const press = async (data: string, update: number) => {
      const chat = { id: 4242 };
      const callback_query = { id: 'x', from: chat, message: { chat }, data };
      const response = await talk.webhook.fetch(telegramRequest({ update_id: update, callback_query }));
      return response.text();
    };
    const place = sent(await press(buttons(opening)[1]?.callback_data ?? '', 100));
    expect(place.text).toContain('Where is the house?');
    const next = sent(await press(buttons(place)[0]?.callback_data ?? '', 101));
    expect(next.text).not.toContain('Where is the house?');
    expect(sent(await press(buttons(place)[1]?.callback_data ?? '', 102)).text).toContain('earlier question');
    expect(sent(await press(buttons(opening)[0]?.callback_data ?? '', 103)).text).toContain('LEAVE NOW');
    expect(await press('nonsense', 104)).toBe('');
  });

  it('lists choices by number where one press cannot say the answer', async () => {
    const talk = talkOn('telegram');
    await talk.arrive();
    for (let turn = 0; turn < 12; turn += 1) {
      const said = sent(await talk.type(turn === 0 ? 'no' : 'skip'));
      const ask = talk.replies.at(-1)?.ask;
      if (!ask?.several) continue;
      expect(said.text).toContain(`\n1 `);
      expect(buttons(said).map((one) => one.text)).toEqual(['Not sure', 'Skip']);
      return;
    }
    throw new Error('no such question was met');
  });

  it('never gets more than 4,096 characters, with the question always whole', async () => {
    const talk = talkOn('telegram');
    await talk.arrive();
    await talk.type('no');
    let said: Sent | undefined;
    for (let turn = 0; turn < 160 && talk.replies.at(-1)?.phase === 'asking'; turn += 1) {
      said = sent(await talk.type('not sure'));
      expect(said.text.length).toBeLessThanOrEqual(4096);
    }
    expect(talk.replies.at(-1)?.phase).toBe('readBack');
    expect(said?.text).toMatch(/Is this right\?|Your answers: https/);
    const list = sent(await talk.type('yes'));
    expect(list.text.length).toBeLessThanOrEqual(4096);
    expect(list.text).toContain('https://walks.example.org/r/');
  });

  it.each([
    ['/help', 'help.look'],
    ['/help@walk_bot', 'help.look'],
    ['/stop', 'walk.paused'],
  ])('takes %s as the word', async (command, phrase) => {
    const talk = talkOn('telegram');
    await talk.arrive();
    await talk.type(command);
    expect(JSON.stringify(talk.replies.at(-1))).toContain(phrase);
  });

  it('says what it cannot take, and keeps nothing of it', async () => {
    const { webhook, store } = testSite(openSettings);
    const chat = { id: 7 };
    const ask = async (update: object) =>
      (await webhook.fetch(telegramRequest({ update_id: 1, ...update }))).text();
    expect(await ask({ message: { chat, photo: [] } })).toContain('words only');
    expect(await ask({ edited_message: { chat, text: 'no, tile' } })).toContain(
      'cannot see what you changed',
    );
    expect(await ask({ channel_post: { chat } })).toBe('');
    expect(await store.list()).toEqual([]);
  });

  it('is refused without the secret, and with another', async () => {
    const { webhook, store } = testSite(openSettings);
    const update = { update_id: 1, message: { chat: { id: 1 }, text: 'hi' } };
    expect((await webhook.fetch(telegramRequest(update, ''))).status).toBe(401);
    expect(
      (await webhook.fetch(telegramRequest(update, `${openSettings.ROOFDOWN_TELEGRAM_SECRET}x`))).status,
    ).toBe(401);
    expect(await store.list()).toEqual([]);
  });
});

describe('what a button carries', () => {
  it('fits into 64 bytes for every option of every question, and is read back', () => {
    const { flow } = realProgramme().checklist;
    for (const question of flow.questions) {
      const key = question.of === undefined ? question.id : `${question.of}/t12/${question.id}`;
      for (const option of [
        ...optionIds(question),
        ...(question.picks ?? []).map((one) => String(one.value)),
        'not sure',
      ]) {
        const data = callbackData(99_999, key, option);
        expect(data, `${key} ${option}`).toBeDefined();
        expect(readCallbackData(data ?? '')).toEqual({ kind: 'choose', key, option, revision: 99_999 });
      }
    }
  });

  it('is left out when it would not fit', () => {
    expect(callbackData(1, 'k'.repeat(40), 'é'.repeat(12))).toBeUndefined();
  });
});

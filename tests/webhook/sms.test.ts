import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signForm } from '../../src/webhook/sms/form-signature.ts';
import { messageXml } from '../../src/webhook/sms/message-xml.ts';
import { isGsm7, septetsOf, toPlainCharacters } from '../../src/wording/gsm7.ts';
import { lengthOf, splitSms } from '../../src/wording/sms-parts.ts';
import { phone, smsRequest, talkOn } from './channel-contract.ts';
import { openSettings, testSite } from './test-site.ts';

describe('a question on a phone', () => {
  it('offers a letter where a bare number would be a measure', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    for (const line of ['no', 'tamber county', 'detached', 'owner', '1995']) await talk.type(line);
    const said = await talk.type('one');
    expect(said).toContain('a flat or nearly flat');
    await talk.type('a');
    expect(talk.replies.at(-1)?.ask?.question).not.toBe('about.slope');
  });
});

describe('the room of a text message (3GPP TS 23.040 cl. 9.2.3.24.1, TS 23.038)', () => {
  const long = (character: string, count: number) => Array.from({ length: count }, () => character).join('');
  it.each([
    ['160 characters of the basic set are one message', long('a', 160), 1],
    ['161 are two parts of at most 153', long('a', 161), 2],
    ['306 fill two parts', long('a', 306), 2],
    ['307 need a third', long('a', 307), 3],
    ['80 euro signs are one message, since each counts two', long('€', 80), 1],
    ['81 euro signs are two', long('€', 81), 2],
    ['70 units of UCS-2 are one message', `${long('a', 69)}”`, 1],
    ['71 are two parts of at most 67', `${long('a', 70)}”`, 2],
    ['134 fill two parts', `${long('a', 133)}”`, 2],
    ['135 need a third', `${long('a', 134)}”`, 3],
  ])('%s', (_, text, count) => {
    expect(splitSms(text)).toHaveLength(count);
    expect(splitSms(text).join('')).toBe(text);
  });

  it('never splits an escape pair, even where one septet is left', () => {
    expect(splitSms(long('€', 81)).map((part) => lengthOf(part, true))).toEqual([152, 10]);
  });

  it('never splits a character of two UCS-2 units', () => {
    const parts = splitSms(long('🏠', 40));
    expect(parts.join('')).toBe(long('🏠', 40));
    expect(parts.map((part) => part.length)).toEqual([66, 14]);
  });

  it.each([...'éñüÉÑÜ¿¡àèìòù£¥@_'])('%s is in the basic set', (one) => expect(septetsOf(one)).toBe(1));
  it.each([...'€[]{}~^|\\'])('%s counts two', (one) => expect(septetsOf(one)).toBe(2));
  it.each([...'áíóú‘’“”–—…•°½×'])('%s is in neither table, and is written plainly', (one) => {
    expect(septetsOf(one)).toBeUndefined();
    expect(isGsm7(toPlainCharacters(one))).toBe(true);
  });

  it('has 128 characters in the basic table, the escape among them, and 9 more in the other', () => {
    const all = Array.from({ length: 0x2fff }, (_, code) => String.fromCharCode(code));
    expect(all.filter((one) => septetsOf(one) === 1)).toHaveLength(127);
    // Form feed, eight signs and the euro sign.
    expect(all.filter((one) => septetsOf(one) === 2)).toHaveLength(10);
  });

  it('splits any text at whole words within the room, and loses no word', () => {
    const word = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
      .map((one) => one.replace(/[ \n]/gu, ''));
    fc.assert(
      fc.property(fc.array(word, { maxLength: 80 }), (words) => {
        const text = words.join(' ');
        const gsm7 = isGsm7(text);
        const parts = splitSms(text);
        const [alone, several] = gsm7 ? [160, 153] : [70, 67];
        const most = parts.length === 1 ? alone : several;
        expect(parts.every((part) => lengthOf(part, gsm7) <= most)).toBe(true);
        expect(parts.join(' ').split(/ +/u).filter(Boolean)).toEqual(text.split(/ +/u).filter(Boolean));
      }),
      { numRuns: 300 },
    );
  });
});

describe('message XML', () => {
  it('escapes what people typed and leaves out what XML does not allow', () => {
    expect(messageXml(['<b> & "it\'s" \u0000\u001b]]> 🏠'])).toBe(
      '<?xml version="1.0" encoding="UTF-8"?>\n<Response><Message>&lt;b&gt; &amp; &quot;it&apos;s&quot; ]]&gt; 🏠</Message></Response>\n',
    );
  });

  it('is empty when nothing is said', () => {
    expect(messageXml([])).toContain('<Response></Response>');
  });
});

describe('the signature of a form post', () => {
  // The two examples that a carrier published in its documentation; from memory, and both come out to the letter.
  it.each([
    ['+14158675309', 'RSOYDt4T1cUTdK1PDd93/VVr8B8='],
    ['+12349013030', '0/KCTR6DLpKmkAf8muzZqo1nDgQ='],
  ])('of a call by %s is the published one', (number, signature) => {
    const fields = {
      CallSid: 'CA1234567890ABCDE',
      Caller: number,
      Digits: '1234',
      From: number,
      To: '+18005551212',
    };
    const url = 'https://mycompany.com/myapp.php?foo=1&bar=2';
    expect(signForm('12345', url, new URLSearchParams(fields))).toBe(signature);
  });

  it.each([
    ['another token', (request: Request) => request, 'another-token-here'],
    [
      'a changed field',
      (request: Request) => new Request(request, { body: 'From=%2B1&Body=x&MessageSid=1' }),
      undefined,
    ],
    [
      'no signature',
      (request: Request) => {
        request.headers.delete('x-sms-signature');
        return request;
      },
      undefined,
    ],
  ])('does not hold with %s', async (_, change, token) => {
    const { webhook, store } = testSite(openSettings);
    const request = smsRequest({ From: phone, Body: 'hi', MessageSid: 'SM1' }, token);
    expect((await webhook.fetch(change(request))).status).toBe(401);
    expect(await store.list()).toEqual([]);
  });

  it('is made over the configured address, whatever the request says', async () => {
    const { webhook } = testSite(openSettings);
    const request = smsRequest({ From: phone, Body: 'hi', MessageSid: 'SM1' });
    request.headers.set('host', 'elsewhere.example.org');
    request.headers.set('x-forwarded-host', 'elsewhere.example.org');
    expect((await webhook.fetch(request)).status).toBe(200);
  });
});

describe('words that carriers reserve', () => {
  it.each(['STOP', 'stop', 'Stop.', 'UNSUBSCRIBE', 'cancel', 'END', 'quit', 'STOPALL'])(
    '%s ends the messages after one line, keeps the answers, and START brings them back',
    async (word) => {
      const talk = talkOn('sms');
      await talk.arrive();
      await talk.type('no');
      const raw = async (text: string) => {
        const id = `SM-${text}-${Math.round(performance.now() * 1000)}`;
        return (await talk.webhook.fetch(smsRequest({ From: phone, Body: text, MessageSid: id }))).text();
      };
      expect(await raw(word)).toContain('You get no more messages');
      expect(await raw('2')).toContain('<Response></Response>');
      expect(await raw(word)).toContain('<Response></Response>');
      expect(await raw('HELP')).toContain('Text STOP to end them');
      expect(await raw('the house is on fire')).toContain('LEAVE NOW');
      await raw('yes');
      await raw(word);
      expect((await raw('START')).replaceAll('</Message><Message>', ' ')).toContain('Where is the house?');
      expect(await talk.store.list()).toMatchObject([{ answered: 1 }]);
    },
  );

  it('inside a sentence are what the person wrote', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    await talk.type('please help me stop embers');
    expect(talk.replies.at(-1)?.phase).toBe('asking');
  });

  it('leave the right to be erased also after STOP', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    await talk.webhook.fetch(smsRequest({ From: phone, Body: 'STOP', MessageSid: 'SM-stop' }));
    expect(await talk.type('forget me')).toContain('Erase this walk');
    expect(await talk.type('yes')).toContain('Erased');
    expect(await talk.store.list()).toEqual([]);
  });
});

describe('a walk by text message', () => {
  it('says the long help on request only', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    const question = await talk.type('no');
    expect(question).not.toContain('by number, letter or in your own words');
    expect((await talk.type('help')).length).toBeGreaterThan(question.length);
  });

  it('gives the list as its first jobs and a link, not as a long text', async () => {
    const talk = talkOn('sms');
    await talk.arrive();
    for (const line of ['no', 'finish']) await talk.type(line);
    const said = await talk.type('yes');
    const link = /https:\/\/walks\.example\.org(\/r\/[\w.-]+)/u.exec(said)?.[1];
    const report = await talk.webhook.fetch(new Request(`http://127.0.0.1${link}`));
    expect(report.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(said.split('<Message>').length).toBeLessThan(9);
  });

  it('is one walk for one number, however it is spelt', async () => {
    const { webhook, store } = testSite(openSettings);
    for (const [at, From] of [phone, '+1 (555) 555-0142', '+15555550143'].entries())
      await webhook.fetch(smsRequest({ From, Body: 'hi', MessageSid: `SM${at}` }));
    expect(await store.list()).toHaveLength(2);
  });

  it('wants a sender and an id', async () => {
    const { webhook } = testSite(openSettings);
    expect((await webhook.fetch(smsRequest({ Body: 'hi' }))).status).toBe(422);
  });
});

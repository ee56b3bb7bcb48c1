import { describe, expect, it } from 'vitest';
import { signedRequest, smsRequest, telegramRequest } from '../channel-contract.ts';
import { callHandedOver, jsonTalk, opening, openSite, words } from './hand-over-talk.ts';

describe('a call that is handed over', () => {
  it('has a code of twelve digits, told once the caller agreed, with where to send it', async () => {
    const { told, code } = await callHandedOver(
      openSite({ ROOFDOWN_REACH: 'to 555-0160 as a text message' }),
    );
    expect(code).toMatch(/^\d{4}-\d{4}-\d{4}$/);
    expect(words(told)).toContain(`read it back to me: ${code}. Send it to 555-0160 as a text message`);
    expect(words(told)).toContain('48 hours');
    expect(told.phase).toBe('asking');
  });

  it('goes on by text message with the answers, without notes and number, and once only', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    const text = async (body: string, from: string, id: string) =>
      (await at.webhook.fetch(smsRequest({ From: from, Body: body, MessageSid: id }))).text();
    const first = await text(code, '+15555550143', 'SM1');
    expect(first).toContain('The 3 answers from your call are here');
    expect(first).toContain('What kind of building is it?');
    expect(first).not.toContain('dogs');
    expect(await text(code, '+15555550143', 'SM1')).toBe(first);
    expect(await text(code, '+15555550144', 'SM2')).toContain('That code opens nothing');
    expect(await text('detached', '+15555550143', 'SM3')).not.toContain('What kind of building');
    const kept = await at.store.list();
    const walk = kept.find((one) => one.id.startsWith('sms_') && one.answered > 2);
    const record = walk && (await at.store.load(walk.id));
    expect(record).toMatchObject({ audience: 'resident', notes: [] });
    expect(JSON.stringify(record)).not.toContain('0142');
    expect(record?.call).toBeUndefined();
  });

  it('goes on in a chat with a second volunteer, who gets the notes and the number', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at, 'hand over to a colleague');
    let id = 0;
    const type = async (line: string) => {
      id += 1;
      const chat = { id: 77, type: 'private' };
      const update = { update_id: id, message: { message_id: id, from: chat, chat, date: 1, text: line } };
      const response = await at.webhook.fetch(telegramRequest(update));
      return ((await response.json()) as { text: string }).text;
    };
    expect(await type('Guide a caller')).toContain('A call about one house');
    const taken = await type(code);
    expect(taken).toContain('The call is yours now');
    expect(taken).toContain('Call back: 555-0142');
    expect(taken).toContain('two dogs');
    expect(taken).toContain('Listen for: ');
    expect(taken).toContain("If they can't tell: ");
  });

  it('is asked about first where answers stand already, and replaces them only after a yes', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    const person = jsonTalk(at, 'person');
    await person.start();
    for (const line of ['no', 'california']) await person.type(line);
    expect(words(await person.type(code))).toContain('2 answers that are here');
    expect(words(await person.type('no'))).not.toContain('from your call');
    await person.type(code);
    // The same code again is no yes.
    expect(words(await person.type(code))).toContain('2 answers that are here');
    const taken = await person.type('yes');
    expect(words(taken)).toContain('The 3 answers from your call are here');
  });

  it('has one code while nobody used it, with what was told until then, and a new one after', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at);
    await volunteer.type('roof condition: curled');
    await volunteer.type('hand over');
    expect(words(await volunteer.type('yes'))).toContain(`Code: ${code}`);
    await volunteer.type('vents kinds: none');
    await volunteer.type('finish');
    expect((await volunteer.type('yes')).phase).toBe('finished');
    const taken = await jsonTalk(at, 'person').start({ text: code });
    expect(words(taken)).toMatch(/The [5-9] answers from your call are here/u);
    await volunteer.type('hand over');
    const next = words(await volunteer.type('yes'));
    expect(next).toContain('Code: ');
    expect(next).not.toContain(code);
  });

  it('loses the number to call back where it waits for a colleague, as soon as the caller wants that', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at, 'hand over to a colleague');
    await volunteer.type('number none');
    const taken = words(await jsonTalk(at, 'colleague').start({ audience: 'volunteer', text: code }));
    expect(taken).toContain('The call is yours now');
    expect(taken).toContain('two dogs');
    expect(taken).not.toContain('0142');
  });

  it('keeps the number for a colleague when the call is closed, and says so', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at, 'hand over to a colleague');
    await volunteer.type('finish');
    const closed = await volunteer.type('yes');
    expect(closed.phase).toBe('finished');
    expect(words(closed)).toContain('It waits with the call for your colleague');
    expect(JSON.stringify(await at.store.load(volunteer.walk() as never))).not.toContain('0142');
    const taken = words(await jsonTalk(at, 'colleague').start({ audience: 'volunteer', text: code }));
    expect(taken).toContain('Call back: 555-0142');
  });

  it('has another code than any call before on the same telephone', async () => {
    const at = openSite();
    const codes: string[] = [];
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (let caller = 0; caller < 3; caller += 1) {
      for (const line of [...opening, 'hand over']) await volunteer.type(line);
      codes.push(/Code: ([\d-]{14})/u.exec(words(await volunteer.type('yes')))?.[1] ?? '');
      at.clock.now = new Date(at.clock.now.getTime() + 60_000);
      for (const line of ['start over', 'yes']) await volunteer.type(line);
    }
    expect(new Set(codes).size).toBe(3);
    // Each opens its own call, also after the walk was started over.
    for (const [number, code] of codes.entries())
      expect(words(await jsonTalk(at, `caller ${number}`).start({ text: code }))).toContain('from your call');
  });

  it('never gives notes and number to whoever has the code of the caller, whatever they say they are', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    const said = JSON.stringify(await jsonTalk(at, 'curious').start({ audience: 'volunteer', text: code }));
    expect(said).not.toContain('0142');
    expect(said).not.toContain('dogs');
  });

  it('is introduced to a second volunteer also when only the closing is left', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'finish', 'hand over to a colleague']) await volunteer.type(line);
    const code = /Code: ([\d-]{14})/u.exec(words(await volunteer.type('yes')))?.[1];
    const taken = words(await jsonTalk(at, 'colleague').start({ audience: 'volunteer', text: code }));
    for (const part of ['The call is yours now', '555-0142', 'is it still safe'])
      expect(taken).toContain(part);
  });

  it('is not used up by the volunteer who made it', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at);
    expect(words(await volunteer.type(code))).toContain('the code of this call');
    expect(words(await jsonTalk(at, 'person').start({ text: code }))).toContain('from your call');
  });

  it('tells nothing again to a message that comes again after the call went on', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at);
    const path = `/walks/${volunteer.walk()}/messages`;
    const repeat = () =>
      at.webhook.fetch(signedRequest(at, path, `volunteer-${opening.length + 3}`, '{"text":"yes"}'));
    expect(await (await repeat()).text()).toContain(code);
    await volunteer.type('roof condition: curled');
    const late = await (await repeat()).text();
    expect(late).not.toContain(code);
    expect(late).toContain('asked for this code earlier');
  });

  it('works until its time is over', async () => {
    const at = openSite({ ROOFDOWN_CODE_HOURS: '2' });
    const { code } = await callHandedOver(at);
    at.clock.now = new Date(at.clock.now.getTime() + 2 * 3_600_000);
    expect(words(await jsonTalk(at, 'late').start({ text: code }))).toContain('That code opens nothing');
  });

  it('is gone when its walk is erased', async () => {
    const at = openSite();
    const { code, volunteer } = await callHandedOver(at);
    await volunteer.type('forget me');
    await volunteer.type('yes');
    expect(words(await jsonTalk(at, 'late').start({ text: code }))).toContain('That code opens nothing');
  });

  it('is not found by trying: few tries a minute, and none counts for another person', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    const guesser = jsonTalk(at, 'guesser');
    await guesser.start();
    const said: string[] = [];
    for (let guess = 0; guess < 7; guess += 1) said.push(words(await guesser.type(`10000000000${guess}`)));
    expect(said.at(0)).toContain('That code opens nothing');
    expect(said.at(-1)).toContain('Please wait a minute');
    expect(words(await guesser.type(code))).toContain('Please wait a minute');
    expect(words(await jsonTalk(at, 'other').start({ text: code }))).toContain('from your call');
  });

  it('is offered before a call is closed, and the call is closed with a text to send', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'roof condition: curled', 'finish']) await volunteer.type(line);
    expect(words(await volunteer.type('yes'))).toContain('I can give you a code');
    expect(words(await volunteer.type('yes'))).toContain('Code: ');
    const closed = await volunteer.type('yes');
    expect(closed.phase).toBe('finished');
    expect(closed.textToSend).toContain('Your house and wildfire, first:');
  });

  it('comes after everything else that matters: an emergency, a number to call back', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    const person = jsonTalk(at, 'person');
    await person.start();
    await person.type('the house is on fire');
    expect((await person.type(code)).phase).toBe('emergency');
    const volunteer = jsonTalk(at, 'other volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of opening.slice(0, 4)) await volunteer.type(line);
    expect(words(await volunteer.type(code))).toContain('Number to call back');
  });
});

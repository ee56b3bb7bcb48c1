import { describe, expect, it } from 'vitest';
import { signedRequest, smsRequest } from '../channel-contract.ts';
import { callHandedOver, jsonTalk, opening, openSite, words } from './hand-over-talk.ts';

describe('the question whether a call may be passed on', () => {
  it('stays with the volunteer when the caller says no', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'hand over']) await volunteer.type(line);
    expect(words(await volunteer.type('no'))).toContain('Nothing is passed on');
  });

  it.each([
    'they do not want that',
    'we do not',
    'of course not',
    'certainly not',
    'yeah no',
    'correct, no',
    'ok but not my number',
    'yes if it is erased tomorrow',
    'true, she refuses',
    'ok she refuses',
    'yes let me ask',
    'ok hang on',
    'yes maybe',
    'they do mind',
    'probably',
    'i think so',
    'hmm',
    'not sure',
    'help',
    'pause',
  ])('is passed on only with a clear yes: not with "%s"', async (said) => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'hand over']) await volunteer.type(line);
    expect(words(await volunteer.type(said))).not.toContain('Code: ');
  });

  it.each(['yes she smells smoke', 'smoke', 'yes but the shed is on fire'])(
    'waits while danger is asked about: "%s"',
    async (said) => {
      const at = openSite();
      const volunteer = jsonTalk(at, 'volunteer');
      await volunteer.start({ audience: 'volunteer' });
      for (const line of [...opening, 'hand over']) await volunteer.type(line);
      const reply = await volunteer.type(said);
      expect(words(reply)).not.toContain('Code: ');
      expect(words(reply)).toMatch(/smoke|LEAVE NOW/u);
      const { code } = await callHandedOver(at);
      const person = jsonTalk(at, 'person');
      await person.start();
      for (const line of ['no', 'california', code]) await person.type(line);
      expect(words(await person.type(said))).not.toContain('from your call');
    },
  );

  it.each(['she says yes', 'go ahead', 'yes please', 'no problem', "that's fine, thanks", 'Sure!'])(
    'is yes with "%s"',
    async (said) => {
      const at = openSite();
      const volunteer = jsonTalk(at, 'volunteer');
      await volunteer.start({ audience: 'volunteer' });
      for (const line of [...opening, 'hand over']) await volunteer.type(line);
      expect(words(await volunteer.type(said))).toContain('Code: ');
    },
  );

  it.each([['!'], ['she is getting the ladder'], ['note a note'], ['minutes 9'], ['left out']])(
    'does not wait for a yes after "%s"',
    async (said) => {
      const at = openSite();
      const volunteer = jsonTalk(at, 'volunteer');
      await volunteer.start({ audience: 'volunteer' });
      for (const line of [...opening, 'hand over', said]) await volunteer.type(line);
      expect(words(await volunteer.type('yes'))).not.toContain('Code: ');
      for (const line of ['forget me', said]) await volunteer.type(line);
      expect(words(await volunteer.type('yes'))).not.toContain('Erased');
    },
  );

  it('is not heard before smoke in a note', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'hand over']) await volunteer.type(line);
    expect(words(await volunteer.type('note she sees smoke'))).toMatch(/smoke/u);
    expect((await volunteer.type('yes')).phase).toBe('emergency');
  });

  it('is not passed on by a yes to another question, after the line dropped', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'hand over']) await volunteer.type(line);
    await at.webhook.fetch(
      signedRequest(at, `/walks/${volunteer.walk()}/messages`, 'again', '{"hello":true}'),
    );
    expect(words(await volunteer.type('yes'))).not.toContain('Code: ');
  });

  it('does not close the call with a no, unless the call was about to be closed', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    for (const line of [...opening, 'finish', 'hand over']) await volunteer.type(line);
    expect((await volunteer.type('no')).phase).toBe('readBack');
    expect((await volunteer.type('yes')).phase).toBe('finished');
  });

  it('is asked about before the opening is over only later', async () => {
    const at = openSite();
    const volunteer = jsonTalk(at, 'volunteer');
    await volunteer.start({ audience: 'volunteer' });
    await volunteer.type('no');
    expect(words(await volunteer.type('hand over please'))).toContain('First the questions at the start');
  });
});

describe('a person who wants no messages', () => {
  it('gets none for a code, nor for words of a volunteer', async () => {
    const at = openSite();
    const { code } = await callHandedOver(at);
    let id = 0;
    const text = async (body: string) => {
      id += 1;
      const fields = { From: '+15555550145', Body: body, MessageSid: `SM${id}` };
      return (await at.webhook.fetch(smsRequest(fields))).text();
    };
    await text('hi');
    await text('STOP');
    for (const line of ['volunteer', code]) expect(await text(line)).not.toContain('<Message>');
  });

  it('is told to start over first, who guides a caller where answers stand', async () => {
    const at = openSite();
    const person = jsonTalk(at, 'person');
    await person.start();
    await person.type('no');
    expect(words(await person.type('guide a caller'))).toContain('"start over" first');
    for (const line of ['start over', 'yes']) await person.type(line);
    expect(words(await person.type('guide a caller'))).toContain('A call about one house');
  });
});

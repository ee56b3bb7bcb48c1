import { describe, expect, it } from 'vitest';
import { openingAsks } from '../../src/conversation/call/call-state.ts';
import { unsafeIn } from '../../src/conversation/call/unsafe.ts';
import { realProgramme } from '../support/programme.ts';
import { day, saidIn } from '../support/walks.ts';
import { call, newCall, openCall, opened, turnAt } from './call-for-tests.ts';

const { flow } = realProgramme().checklist;

describe('the opening of a call', () => {
  it('asks about danger before anything else, and says on whose behalf', () => {
    const { reply } = call([], newCall({ behalf: 'the Quillan Bend Fire District' }));
    expect(reply.ask?.question).toBe('about.danger');
    const who = reply.parts.find((part) => part.kind === 'say' && part.text === 'call.opening.who');
    expect(who).toMatchObject({ values: { behalf: 'the Quillan Bend Fire District' } });
  });

  it('asks where they are, for the ground, for consent and for a number, each once', () => {
    let record = call([]).record;
    for (const [at, ask] of openingAsks.entries()) {
      record = turnAt(record, opened[at] ?? '').record;
      expect(record.cursor.pending).toEqual({ kind: 'opening', ask });
    }
    const last = turnAt(record, 'skip');
    expect(last.record.cursor.pending).toBeUndefined();
    expect(last.reply.ask?.question).toBe('about.place');
  });

  it('keeps nothing of a caller who does not agree', () => {
    const { record, reply, erase } = call(['no', 'at home', 'yes', 'no']);
    expect(erase).toBe(true);
    expect(record).toMatchObject({ sheet: {}, notes: [] });
    expect(record.call).toBeUndefined();
    expect(saidIn(reply)).toContain('call.consent.no');
  });

  it('takes silence for no consent, and goes on without it nowhere', () => {
    const { record } = call(['no', 'at home', 'yes', 'skip']);
    expect(record.cursor.pending).toEqual({ kind: 'opening', ask: 'consent' });
  });

  it('stops for an alarm in the middle of the opening', () => {
    expect(call(['no', 'we see flames']).record.cursor.phase).toBe('emergency');
    expect(call(['they say the sky is orange, told to leave']).record.cursor.phase).toBe('emergency');
  });

  it('pauses in the middle of the opening, and asks the rest on coming back', () => {
    const paused = call(['no', 'at home', 'pause']);
    expect(paused.record.cursor.phase).toBe('paused');
    const back = turnAt(paused.record, { kind: 'hello' });
    expect(back.record.cursor.pending).toEqual({ kind: 'opening', ask: 'ground' });
  });
});

describe('the number to call back', () => {
  it('is kept with the call alone, and erased when the call is closed', () => {
    const kept = call(['no', 'at home', 'yes', 'yes', '555 0142', 'tamber county']).record;
    expect(kept.call?.callBack).toBe('555 0142');
    expect(JSON.stringify({ ...kept, call: undefined })).not.toContain('0142');
    const closed = turnAt(turnAt(kept, 'finish').record, 'yes').record;
    expect(closed.cursor.phase).toBe('finished');
    expect(JSON.stringify(closed)).not.toContain('0142');
  });

  it.each([
    ['number 555-0199', '555-0199'],
    ['call back on +1 555 0142', '+1 555 0142'],
    ['number none', undefined],
  ])('is changed at any time by "%s"', (said, number) => {
    const before = {
      ...openCall(),
      call: { since: day.toISOString(), opened: openingAsks, callBack: '555-0142' },
    };
    expect(turnAt(before, said).record.call?.callBack).toBe(number);
  });

  it.each(['number 541-555-0142', 'number: (541) 555-0142', '(541) 555-0142'])(
    'is taken as people write it: "%s"',
    (said) => {
      const asked = call(['no', 'at home', 'yes', 'yes']);
      const { record, reply } = turnAt(asked.record, said);
      expect(record.call?.callBack).toBe(said.replace(/^number:? /, ''));
      expect(record.cursor.pending).toBeUndefined();
      expect(reply.ask?.question).toBe('about.place');
      const later = said.startsWith('number') ? turnAt(openCall(), said).record : record;
      expect(later.call?.callBack).toContain('555-0142');
      expect(Object.keys(later.sheet)).not.toContain('about.label');
    },
  );

  it('is none when the question is skipped', () => {
    const { record } = turnAt(call(['no', 'at home', 'yes', 'yes', 'number x']).record, 'skip');
    expect(record.call?.callBack).toBeUndefined();
  });

  it('is no number of a choice', () => {
    const { record } = turnAt(openCall(), 'number 2');
    expect(record.call?.callBack).toBeUndefined();
    expect(record.sheet['about.building']).toMatchObject({ value: 'terrace' });
  });

  it('goes with everything else when the caller asks to be forgotten', () => {
    const { record, erase } = call([
      'no',
      'at home',
      'yes',
      'yes',
      '555-0142',
      'tamber county',
      'forget me',
      'yes',
    ]);
    expect(erase).toBe(true);
    expect(record.call).toBeUndefined();
  });
});

describe('help in a call', () => {
  it('never tells a caller how to go into an attic', () => {
    const asked = turnAt(openCall(), 'go to vents');
    const record = { ...asked.record, cursor: { phase: 'asking' as const, key: 'vents.attic' } };
    const said = saidIn(turnAt(record, 'help').reply);
    expect(said).toContain('help.look');
    expect(said).not.toContain('caution/attic');
    const { call: _, ...alone } = record;
    const resident = { ...alone, audience: 'resident' as const };
    expect(saidIn(turnAt(resident, 'help').reply)).toContain('caution/attic');
  });
});

describe('the stop line', () => {
  it('is one key away at any moment, and changes nothing', () => {
    for (const record of [call([]).record, call(['no']).record, openCall()]) {
      const { record: after, reply } = turnAt(record, '!');
      expect(saidIn(reply)).toContain('call.stop.any');
      expect(after.sheet).toEqual(record.sheet);
      expect(after.cursor).toEqual(record.cursor);
      // Nothing is shown after it that could push it out of sight.
      expect(reply.ask).toBeUndefined();
    }
  });

  it.each([
    ['he is getting a ladder', 'ladder'],
    ['hang on, I will get the ladder', 'ladder'],
    ['she climbs up now', 'roof'],
    ['my husband is climbing on the roof', 'roof'],
    ['going up to the attic to look', 'attic'],
    ['he is crawling under the house', 'crawl'],
    ['let me get the chainsaw', 'saw'],
    ['there is a branch on the wire, he pushes', 'line'],
  ])('is there when somebody says "%s"', (said, what) => {
    expect(unsafeIn(flow.call ?? never(), said)).toBe(what);
    const { record, reply } = turnAt(openCall(), said);
    expect(saidIn(reply)).toContain(`call.stop.${what}`);
    expect(record.notes.at(-1)?.text).toBe(said);
    expect(record.cursor.key).toBe('about.building');
  });

  it('leaves the question open, even where the same words could answer it', () => {
    const { record, reply } = turnAt(openCall(), 'it stands alone, and he is getting a ladder');
    expect(saidIn(reply)).toContain('call.stop.ladder');
    expect(record.sheet['about.building']).toBeUndefined();
  });

  it('is not there for any answer that a question offers', () => {
    const offered = flow.questions.flatMap((question) =>
      (question.options ?? []).flatMap((option) => [
        ...option.words,
        typeof option.label === 'string' ? option.label : option.label.resident,
      ]),
    );
    expect(offered.filter((words) => unsafeIn(flow.call ?? never(), words) !== undefined)).toEqual([]);
  });

  it('has a line for everything unsafe', () => {
    for (const { id } of flow.call?.unsafe ?? []) expect(flow.phrases[`call.stop.${id}`]).toBeDefined();
    expect(flow.call?.unsafe.length).toBeGreaterThan(4);
  });
});

function never(): never {
  throw new Error('the flow has no part for calls');
}

describe('notes', () => {
  it('stand beside the question at which they were taken, and leave it asked', () => {
    const { record, reply } = turnAt(openCall(), 'note two dogs in the yard');
    expect(record.notes.at(-1)).toEqual({ key: 'about.building', text: 'two dogs in the yard' });
    expect(reply.ask?.question).toBe('about.building');
  });

  it('about smoke are kept, and asked about', () => {
    const { record } = turnAt(openCall(), 'note it smells of smoke from a barbecue');
    expect(record.notes.at(-1)?.text).toBe('it smells of smoke from a barbecue');
    expect(record.cursor.pending?.kind).toBe('emergency');
    expect(turnAt(record, 'no').reply.ask?.question).toBe('about.building');
  });

  it('without a text are asked for', () => {
    const { record, reply } = turnAt(openCall(), 'note');
    expect(saidIn(reply)).toContain('call.note-what');
    expect(record.notes.map((note) => note.text)).toEqual(['at home']);
  });
});

describe('a dropped call', () => {
  it('goes on with what is kept, asks first whether it is safe, and does not count the time between', () => {
    const before = turnAt(openCall(8), '1', 90).record;
    const { record, reply } = turnAt(before, { kind: 'hello' }, 4000);
    expect(saidIn(reply)).toContain('call.resumed.say');
    expect(record.sheet).toEqual(before.sheet);
    expect(record.call?.since).toBe(new Date(day.getTime() + (4000 - 90) * 1000).toISOString());
  });
});

describe('a walk of a resident', () => {
  it('knows nothing of calls: "!" and "note" are answers like any other', () => {
    const record = { ...openCall(), audience: 'resident' as const };
    const { call: _, ...alone } = record;
    const { record: after, reply } = turnAt(alone, 'note two dogs');
    expect(after.notes).toEqual(record.notes);
    expect(reply.ask?.guide).toBeUndefined();
    expect(reply.ask?.say.text).toBe('question/about.building/ask');
  });
});

import { describe, expect, it } from 'vitest';
import { pathOf } from '../../src/answers/path.ts';
import type { Message } from '../../src/conversation/message.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';
import { saidIn, talk, walkWith } from '../support/walks.ts';

const programme = realProgramme();
const { index } = programme.checklist;
const whole = randomSheet(index, seededRandom(3), { unsure: 0, partial: 0 });
const hello: Message = { kind: 'hello' };

describe('a turn', () => {
  it('is pure: the same record and message give the same, and the record stays as it was', () => {
    const record = Object.freeze(walkWith(programme, Object.freeze({ ...whole }), 'roof.covering'));
    const before = JSON.stringify(record);
    const [one, two] = [talk(programme, record, '1'), talk(programme, record, '1')];
    expect(one).toEqual(two);
    expect(JSON.stringify(record)).toBe(before);
  });

  it('opens with what the walk is, the danger first, and the first question', () => {
    const { reply } = talk(programme, walkWith(programme), hello);
    expect(saidIn(reply)).toContain('opening.danger');
    expect(reply.ask?.key).toBe('about.danger');
  });

  it.each(['not sure', 'skip', 'maybe'])('does not go on from the danger with "%s"', (said) => {
    const { record, reply } = talk(programme, walkWith(programme), hello, said);
    expect(saidIn(reply)).toContain('danger.look');
    expect(reply.ask?.key).toBe('about.danger');
    expect(record.sheet).toEqual({});
  });

  it.each(['out of danger', 'we are safe', 'all clear', 'fine'])('takes "%s" for no danger', (said) => {
    expect(talk(programme, walkWith(programme), hello, said).reply.ask?.key).toBe('about.place');
  });

  it('does not take a colour for a command', () => {
    const { reply } = talk(programme, walkWith(programme, {}, 'roof.covering'), 'black');
    expect(reply.ask?.key).toBe('roof.covering');
  });

  it.each(['texas', 'Utah', 'another state'])('takes "%s" for a place without rules of its own', (said) => {
    const { record } = talk(programme, walkWith(programme, {}, 'about.place'), said);
    expect(record.sheet['about.place']).toMatchObject({ value: 'general' });
  });

  it('counts up the revision each time', () => {
    const record = walkWith(programme);
    expect(talk(programme, record, 'no', 'help', 'zx').record.revision).toBe(record.revision + 3);
  });
});

describe('a press on a choice that was shown earlier', () => {
  const press: Message = { kind: 'choose', key: 'roof.covering', option: 'metal', revision: 4 };

  it('changes that answer, says so, and stays where the walk is', () => {
    const record = walkWith(programme, whole, 'siding.kind');
    const { record: after, reply } = talk(programme, record, press);
    expect(after.sheet['roof.covering']).toMatchObject({ status: 'given', value: 'metal' });
    expect(saidIn(reply)).toContain('walk.late-edit');
    expect(reply.ask?.key).toBe('siding.kind');
  });

  it('answers the question when it is the one asked now', () => {
    const { reply } = talk(programme, walkWith(programme, {}, 'roof.covering'), press);
    expect(saidIn(reply)).not.toContain('walk.late-edit');
    expect(saidIn(reply)).toContain('note.taken');
  });

  it('changes nothing while there is an emergency', () => {
    const stopped = talk(programme, walkWith(programme, whole, 'siding.kind'), { kind: 'emergency' }).record;
    const { record: after, reply } = talk(programme, stopped, press);
    expect(after.sheet).toEqual(whole);
    expect(reply.phase).toBe('emergency');
    expect(saidIn(reply)).toEqual(['emergency.safe-now']);
  });
});

describe('starting over', () => {
  const record = walkWith(programme, whole, 'siding.kind');

  it('is asked once more before anything is forgotten', () => {
    const { record: asked, reply } = talk(programme, record, 'start over');
    expect(saidIn(reply)).toContain('walk.start-over-sure');
    expect(asked.sheet).toEqual(whole);
    expect(reply.ask).toBeUndefined();
  });

  it.each(['yes', 'y', 'Yes please'])('forgets all answers after "%s"', (yes) => {
    const { record: after, reply } = talk(programme, record, 'start over', yes);
    expect(after.sheet).toEqual({});
    expect(reply.ask?.key).toBe('about.danger');
  });

  it.each(['no', 'hm', 'roof', '1', 'start over'])('keeps them after "%s"', (other) => {
    const { record: after, reply } = talk(programme, record, 'start over', other);
    expect(after.sheet).toEqual(whole);
    expect(saidIn(reply)).toContain('walk.kept');
    expect(reply.ask?.key).toBe('siding.kind');
  });
});

describe('pausing, going back, finishing', () => {
  const record = walkWith(programme, whole, 'siding.kind');

  it('goes on after a pause where it stopped, whoever writes what', () => {
    const paused = talk(programme, record, 'pause');
    expect(paused.reply.phase).toBe('paused');
    for (const said of [hello, 'hi again', 'zx'] as const) {
      const { reply, record: after } = talk(programme, paused.record, said);
      expect(reply.ask?.key).toBe('siding.kind');
      expect(after.sheet).toEqual(whole);
    }
  });

  it('goes back one question at a time to the very first, and says when there is none before', () => {
    const { steps } = pathOf(index, whole);
    let last = { record, reply: talk(programme, record, 'help').reply };
    const from = steps.findIndex((step) => step.key === 'siding.kind');
    for (const step of steps.slice(0, from).reverse()) {
      last = talk(programme, last.record, 'go back');
      expect(last.reply.ask?.key).toBe(step.key);
    }
    expect(saidIn(talk(programme, last.record, 'go back').reply)).toContain('walk.at-the-start');
    expect(last.record.sheet).toEqual(whole);
  });

  it('reads back the answers so far when it is finished early, and says how many are open', () => {
    const part = Object.fromEntries(Object.entries(whole).filter(([key]) => key.startsWith('about.')));
    const early = talk(programme, walkWith(programme, part), 'finish');
    expect(early.reply.phase).toBe('readBack');
    expect(saidIn(early.reply)).toEqual(
      expect.arrayContaining(['read-back.intro', 'readBack', 'read-back.open']),
    );
    const listed = talk(programme, early.record, 'yes');
    expect(listed.reply.phase).toBe('finished');
    expect(saidIn(listed.reply)).toContain('report');
    expect(listed.record.sheet).toEqual(part);
  });

  it('corrects an answer from the read-back and from after the list, and comes back to it', () => {
    const readBack = talk(programme, record, 'finish').record;
    for (const from of [readBack, talk(programme, readBack, 'yes').record]) {
      const changing = talk(programme, from, 'change roof condition');
      expect(changing.reply.ask?.key).toBe('roof.condition');
      const changed = talk(programme, changing.record, 'missing');
      expect(changed.record.sheet['roof.condition']).toMatchObject({ value: 'missing' });
      expect(changed.reply.phase).toBe('readBack');
    }
  });
});

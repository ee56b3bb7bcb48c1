import { describe, expect, it } from 'vitest';
import { pathOf } from '../../src/answers/path.ts';
import { emergencyNumbers } from '../../src/conversation/emergency.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';
import { saidIn, talk, walkWith } from '../support/walks.ts';

const programme = realProgramme();
const { flow, index } = programme.checklist;
const words = flow.words['en']?.emergency;
if (!words) throw new Error('There are no English words.');
const whole = randomSheet(index, seededRandom(9), { unsure: 0, partial: 0 });

/** Walks at questions of every kind, and where none is asked. */
const kinds = [...new Set(flow.questions.map((one) => `${one.kind}${one.by ?? ''}`))];
const asking = kinds.map((kind) => {
  for (let seed = 0; ; seed++) {
    const sheet = randomSheet(index, seededRandom(seed), { unsure: 0, partial: 0 });
    const step = pathOf(index, sheet).steps.find(
      ({ question }) => `${question.kind}${question.by ?? ''}` === kind && question.role !== 'danger',
    );
    if (step) return [kind, walkWith(programme, sheet, step.key)] as const;
  }
});
const readBack = talk(programme, walkWith(programme, whole, 'siding.kind'), 'finish').record;
const states = [
  ...asking,
  ['readBack', readBack],
  ['finished', talk(programme, readBack, 'yes').record],
  ['paused', talk(programme, walkWith(programme, whole, 'siding.kind'), 'pause').record],
  ['startOver', talk(programme, walkWith(programme, whole, 'siding.kind'), 'start over').record],
] as const;

describe('an emergency', () => {
  it.each(states)('stops the walk and says to leave and whom to call, in the state %s', (_, record) => {
    for (const said of [
      'the house is on fire',
      'we have been told to leave',
      { kind: 'emergency' } as const,
    ]) {
      const { reply, record: after } = talk(programme, record, said);
      expect(reply.phase).toBe('emergency');
      expect(saidIn(reply)).toEqual(['emergency.leave', 'emergency.call', 'emergency.kept']);
      expect(reply.ask).toBeUndefined();
      expect(after.sheet).toEqual(record.sheet);
    }
  });

  it.each(words.sure)('is recognised at once: %s', (said) => {
    expect(talk(programme, walkWith(programme, whole, 'siding.kind'), said).reply.phase).toBe('emergency');
  });

  it.each(words.never)('is never made of: %s', (said) => {
    for (const key of ['siding.kind', 'zone0.things']) {
      const { reply } = talk(programme, walkWith(programme, whole, key), said);
      expect(reply.phase, key).not.toBe('emergency');
      expect(saidIn(reply), key).not.toContain('emergency.is-it');
    }
  });

  it('that may be one is met with one short question; only a clear no goes on', () => {
    const record = walkWith(programme, whole, 'about.place');
    const doubt = talk(programme, record, 'smoke');
    expect(saidIn(doubt.reply)).toEqual(['emergency.is-it']);
    for (const said of ['yes', 'maybe', 'zx', 'help'])
      expect(talk(programme, doubt.record, said).reply.phase, said).toBe('emergency');
    const no = talk(programme, doubt.record, 'no');
    expect(no.reply.ask?.key).toBe('about.place');
    expect(no.record.sheet).toEqual(whole);
  });

  it.each(states)(
    'is over only when the person says so; then the walk goes on where it was, from %s',
    (name, record) => {
      const stopped = talk(programme, record, { kind: 'emergency' }).record;
      for (const said of ['hm', 'finish', 'back', 'start over', '1', { kind: 'hello' } as const]) {
        const { reply, record: after } = talk(programme, stopped, said);
        expect(reply.phase, JSON.stringify(said)).toBe('emergency');
        expect(after.sheet).toEqual(record.sheet);
      }
      expect(saidIn(talk(programme, stopped, 'no').reply)).toContain('emergency.leave');
      const safe = talk(programme, stopped, 'yes');
      expect(safe.record.sheet).toEqual(record.sheet);
      if (record.cursor.phase === 'asking') expect(safe.record.cursor.key).toBe(record.cursor.key);
      else expect(safe.record.cursor.phase, name).not.toBe('emergency');
    },
  );

  it('told as the answer about danger stops the walk, and that answer no longer holds once the person is safe', () => {
    const stopped = talk(programme, walkWith(programme, {}, 'about.danger'), 'yes');
    expect(stopped.reply.phase).toBe('emergency');
    expect(stopped.record.sheet['about.danger']).toMatchObject({ value: 'yes' });
    const safe = talk(programme, stopped.record, 'yes');
    expect(safe.record.sheet['about.danger']).toMatchObject({ value: 'no' });
    expect(safe.reply.ask?.key).toBe('about.place');
  });

  it('names the number of the place, and all that are configured while the place is not known', () => {
    const of = (place: string | undefined) => {
      const sheet =
        place === undefined ? {} : ({ 'about.place': { status: 'given', value: place } } as const);
      const { reply } = talk(programme, walkWith(programme, sheet, 'about.danger'), { kind: 'emergency' });
      const call = reply.parts.find((part) => part.kind === 'say' && part.text === 'emergency.call');
      return (call as { values?: { numbers?: { list: string[] } } }).values?.numbers?.list;
    };
    // Emergency numbers, from memory but for New Zealand's: 911 in the USA and Canada, 000 in Australia, 111 in New Zealand.
    expect(of('california')).toEqual(['911']);
    expect(of('australia')).toEqual(['000']);
    expect(of('new-zealand')).toEqual(['111']);
    expect(of(undefined)).toEqual(expect.arrayContaining(['911', '112', '000', '111']));
    expect(of('general')).toEqual(of(undefined));
    expect(emergencyNumbers(flow, 'australia', true)).toEqual(['000']);
  });
});

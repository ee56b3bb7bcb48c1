import { describe, expect, it } from 'vitest';
import type { PlainAnswer } from '../../src/answers/answer.ts';
import { realProgramme } from '../support/programme.ts';
import { saidIn, walkWith } from '../support/walks.ts';
import { openCall, turnAt } from './call-for-tests.ts';

const given = (value: string | readonly string[]) => ({ status: 'given', value }) as PlainAnswer;

/** A call at this question, with nothing else answered. */
function at(key: string, sheet: Record<string, PlainAnswer> = {}) {
  const { cursor } = walkWith(realProgramme(), sheet, key);
  const open = openCall();
  return { ...open, sheet: { ...open.sheet, ...sheet }, cursor };
}

describe('an answer to another question than the one asked', () => {
  it.each([
    ['fence: wood', 'fences.meets', { sides: { left: { value: 'wood' } } }],
    [
      'fence: wood left, rest none',
      'fences.meets',
      { sides: { left: { value: 'wood' }, front: { value: 'none' } } },
    ],
    ['the fence on the left is wood, by the way', 'fences.meets', { sides: { left: { value: 'wood' } } }],
    ['roof covering: metal', 'roof.covering', { value: 'metal' }],
    ['roof covering is metal', 'roof.covering', { value: 'metal' }],
    ['they said earlier: metal roof', 'roof.covering', { value: 'metal' }],
    ['earlier: the roof covering is tile', 'roof.covering', { value: 'tile' }],
    ['year built: 1962', 'about.year-built', { value: 1962 }],
    ['oh and the siding is stucco', 'siding.kind', { sides: { back: { value: 'stone' } } }],
  ])('"%s" lands in its place', (said, key, answer) => {
    const record = at('about.tenure');
    const { record: after, reply } = turnAt(record, said);
    expect(after.sheet[key]).toMatchObject(answer);
    expect(reply.ask?.question).toBe('about.tenure');
    expect(saidIn(reply)[0]).toBe('call.landed');
  });

  it('corrects what was said before, and says what it was', () => {
    const record = at('about.tenure', { 'roof.covering': given('tile') });
    const { record: after, reply } = turnAt(record, 'they said earlier: metal roof');
    expect(after.sheet['roof.covering']).toMatchObject({ value: 'metal' });
    expect(saidIn(reply)[0]).toBe('call.landed.changed');
  });

  it('adds a side to those that are known, without calling it a change or asking for the others', () => {
    const left = turnAt(at('about.tenure'), 'fence: wood left').record;
    const { record, reply } = turnAt(left, 'fence: vinyl right');
    expect(record.sheet['fences.meets']).toMatchObject({
      sides: { left: { value: 'wood' }, right: { value: 'vinyl' } },
    });
    expect(saidIn(reply)).toEqual(['call.landed', 'call.landed.still']);
  });

  it('says that an answer without sides was taken for every side', () => {
    const { reply } = turnAt(at('about.tenure'), 'fence: wood');
    expect(saidIn(reply)).toContain('call.landed.every-side');
    expect(saidIn(turnAt(at('about.tenure'), 'fence: wood left, rest none').reply)).not.toContain(
      'call.landed.every-side',
    );
  });

  it('is none where the words are about the question asked', () => {
    const { record } = turnAt(at('roof.condition'), 'the roof is sound');
    expect(record.sheet['roof.condition']).toMatchObject({ value: 'sound' });
  });

  it('is kept as a note where the question is not asked for this house', () => {
    const { record, reply } = turnAt(at('about.tenure'), 'sides open to the air: front and back');
    expect(saidIn(reply)).toContain('call.landed.not-asked');
    expect(record.notes.at(-1)?.text).toBe('sides open to the air: front and back');
  });

  it('that cannot be told is kept as a note after "earlier", and said so', () => {
    const { record, reply } = turnAt(at('about.tenure'), 'they said earlier: bla bla');
    expect(saidIn(reply)).toContain('call.landed.unclear');
    expect(record.notes.at(-1)?.text).toBe('bla bla');
  });

  it('never hides the order to leave', () => {
    expect(turnAt(at('about.tenure'), 'danger now: yes').record.cursor.phase).toBe('emergency');
    expect(turnAt(at('about.tenure'), 'earlier: we see flames').record.cursor.phase).toBe('emergency');
  });

  it('leaves commands, jumps and skips what they are', () => {
    expect(turnAt(at('about.tenure'), 'go to vents').reply.ask?.question).toBe('vents.kinds');
    expect(turnAt(at('about.tenure'), 'skip').record.sheet['about.tenure']).toMatchObject({
      status: 'skipped',
    });
    expect(turnAt(at('about.tenure'), 'why').reply.ask?.question).toBe('about.tenure');
  });
});

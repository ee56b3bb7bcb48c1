import { describe, expect, it } from 'vitest';
import { pathOf } from '../../src/answers/path.ts';
import { buildProgramme, type Programme } from '../../src/conversation/programme.ts';
import type { WalkRecord } from '../../src/conversation/record.ts';
import type { Flow, Question } from '../../src/flow/flow.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';
import { saidIn, talk, walkWith } from '../support/walks.ts';

const programme = realProgramme();
const { flow, index } = programme.checklist;
const whole = randomSheet(index, seededRandom(5), { unsure: 0.05, partial: 0 });
const question = (id: string): Question => {
  const found = index.questions.get(id);
  if (!found) throw new Error(`There is no question ${id}.`);
  return found;
};

let version = 0;
/** The real flow with its questions changed, as a programme of its own. */
function changedTo(change: (questions: readonly Question[]) => readonly Question[]): Programme {
  version++;
  const changed: Flow = { ...flow, questions: change(flow.questions), fingerprint: `changed-${version}` };
  return buildProgramme(changed);
}
const replaced = (id: string, now: Partial<Question>) =>
  changedTo((all) => all.map((one) => (one.id === id ? ({ ...one, ...now } as Question) : one)));

const at = (key: string, sheet = whole): WalkRecord => walkWith(programme, sheet, key);
const openIn = (now: Programme, { sheet }: WalkRecord) =>
  pathOf(now.checklist.index, sheet)
    .steps.filter((step) => sheet[step.key] === undefined)
    .map((step) => step.key);

describe('a walk taken up after the checklist changed', () => {
  it('is told so once, and then goes on', () => {
    const now = replaced('siding.kind', { ask: 'What clads the walls?' });
    const first = talk(now, at('siding.kind'), { kind: 'hello' });
    expect(saidIn(first.reply)[0]).toBe('walk.flow-changed');
    expect(first.record.flow).toBe(now.checklist.flow.fingerprint);
    expect(first.record.sheet).toEqual(whole);
    expect(first.reply.ask?.key).toBe('siding.kind');
    expect(saidIn(talk(now, first.record, 'help').reply)).not.toContain('walk.flow-changed');
  });

  it('keeps an answer whose question has a new name', () => {
    const old = question('roof.condition');
    const now = changedTo((all) =>
      all.map((one) => (one.id === old.id ? { ...one, id: 'roof.shape', renamedFrom: [old.id] } : one)),
    );
    const { record, reply } = talk(now, at('siding.kind'), { kind: 'hello' });
    expect(record.sheet['roof.shape']).toEqual(whole['roof.condition']);
    expect(Object.keys(record.sheet)).toHaveLength(Object.keys(whole).length);
    expect(reply.ask?.key).toBe('siding.kind');
  });

  it('asks on under the new name when the question asked now was renamed', () => {
    const { 'roof.condition': _, ...rest } = whole;
    const now = changedTo((all) =>
      all.map((one) =>
        one.id === 'roof.condition' ? { ...one, id: 'roof.shape', renamedFrom: ['roof.condition'] } : one,
      ),
    );
    const { record, reply } = talk(now, at('roof.condition', rest), '2');
    expect(record.sheet['roof.shape']).toMatchObject({
      status: 'given',
      value: question('roof.condition').options?.[1]?.id,
    });
    expect(reply.phase).toBe('readBack');
  });

  it('follows a name that changed in a group, for each member', () => {
    const sheet = {
      ...whole,
      'trees.count': { status: 'given', value: ['t1', 't3'] },
      'trees/t1/trees.dead': { status: 'given', value: 'dead' },
      'trees/t3/trees.dead': { status: 'skipped' },
    } as const;
    const now = changedTo((all) =>
      all.map((one) =>
        one.id === 'trees.dead' ? { ...one, id: 'trees.alive', renamedFrom: ['trees.dead'] } : one,
      ),
    );
    const { record } = talk(now, at('siding.kind', sheet), { kind: 'hello' });
    expect(record.sheet['trees/t1/trees.alive']).toEqual({ status: 'given', value: 'dead' });
    expect(record.sheet['trees/t3/trees.alive']).toEqual({ status: 'skipped' });
  });

  it('asks what was put in, and keeps what was answered after it', () => {
    const extra: Question = { ...question('siding.condition'), id: 'siding.colour', by: undefined } as never;
    const now = changedTo((all) => all.flatMap((one) => (one.id === 'siding.kind' ? [extra, one] : [one])));
    const { record, reply } = talk(
      now,
      { ...at('siding.kind'), cursor: { phase: 'readBack' } },
      { kind: 'hello' },
    );
    expect(openIn(now, record)).toEqual(['siding.colour']);
    expect(record.sheet).toEqual(whole);
    expect(reply.parts[0]).toMatchObject({ text: 'walk.flow-changed', values: { open: 1, again: 0 } });
  });

  it('keeps the answer to a question that was taken out, reads it nowhere, and has it when the question comes back', () => {
    const now = changedTo((all) => all.filter((one) => one.id !== 'zone0.mat'));
    const { record } = talk(now, at('siding.kind'), { kind: 'hello' });
    expect(record.sheet['zone0.mat']).toEqual(whole['zone0.mat']);
    expect(pathOf(now.checklist.index, record.sheet).byKey.has('zone0.mat')).toBe(false);
    expect(talk(programme, record, { kind: 'hello' }).record.sheet).toEqual(whole);
  });

  it('goes on at the first question that waits when the one asked now was taken out', () => {
    const { 'zone0.mat': _, 'zone1.tank': __, ...rest } = whole;
    const now = changedTo((all) => all.filter((one) => one.id !== 'zone0.mat'));
    for (const said of [{ kind: 'hello' }, 'help', 'mm'] as const) {
      const { reply } = talk(now, at('zone0.mat', rest), said);
      expect(reply.ask?.key).toBe('zone1.tank');
    }
  });

  it('keeps all answers when questions change places', () => {
    const now = changedTo((all) => {
      const roof = all.filter((one) => one.stop === 'roof' && one.when === undefined);
      const order = [...roof].reverse();
      return all.map((one) => (roof.includes(one) ? (order[roof.indexOf(one)] ?? one) : one));
    });
    const { record } = talk(now, at('siding.kind'), { kind: 'hello' });
    expect(record.sheet).toEqual(whole);
  });

  it('asks again where the chosen option is gone, and only there', () => {
    const options = question('roof.covering').options ?? [];
    const sheet = { ...whole, 'roof.covering': { status: 'given', value: 'flat' } } as const;
    const now = replaced('roof.covering', { options: options.filter((one) => one.id !== 'flat') });
    const { record, reply } = talk(now, at('siding.kind', sheet), { kind: 'hello' });
    expect(record.sheet['roof.covering']).toBeUndefined();
    expect(reply.parts[0]).toMatchObject({ values: { again: 1 } });
    expect(openIn(now, record)).toContain('roof.covering');
    const other = talk(
      now,
      at('siding.kind', { ...sheet, 'roof.covering': { status: 'given', value: 'tile' } }),
      { kind: 'hello' },
    );
    expect(other.record.sheet['roof.covering']).toMatchObject({ value: 'tile' });
  });

  it.each([
    ['roof.covering', { kind: 'yesNo', options: undefined }],
    ['roof.covering', { kind: 'several' }],
    ['roof.litter', { kind: 'choice' }],
    ['siding.kind', { by: undefined }],
    ['roof.condition', { by: 'side' }],
    ['eaves.gap', { kind: 'choice', options: question('roof.covering').options }],
    ['about.slope', { kind: 'text' }],
    ['about.year-built', { kind: 'length', unsafeEnd: 'low', bare: { imperial: 'ft', metric: 'm' } }],
    ['about.slope', { kind: 'number' }],
    ['zone1.shrub-gap', { kind: 'slope' }],
    ['roof.covering', { kind: 'text', options: undefined }],
  ] as const)('never takes an answer for one of another kind: %s %j', (id, now) => {
    const answers = {
      'roof.covering': { status: 'given', value: 'tile' },
      'roof.litter': { status: 'given', value: ['valleys'] },
      'siding.kind': { status: 'bySide', sides: { front: { status: 'given', value: 'stone' } } },
      'roof.condition': { status: 'given', value: 'sound' },
      'eaves.gap': { status: 'bySide', sides: { front: { status: 'given', value: 0.01 } } },
      'about.slope': { status: 'given', value: 20 },
      'about.year-built': { status: 'given', value: 1990 },
      'zone1.shrub-gap': { status: 'given', value: 2 },
    } as const;
    const before = talk(programme, at('siding.kind', { ...whole, [id]: answers[id] }), 'help').record;
    const { record } = talk(replaced(id, now as never), before, { kind: 'hello' });
    expect(record.sheet[id]).toBeUndefined();
  });

  it('asks again only about the sides whose choice is gone', () => {
    const answer = {
      status: 'bySide',
      sides: { front: { status: 'given', value: 'wood' }, left: { status: 'given', value: 'stone' } },
    } as const;
    const options = (question('siding.kind').options ?? []).filter((one) => one.id !== 'wood');
    const { record } = talk(
      replaced('siding.kind', { options }),
      at('roof.covering', { ...whole, 'siding.kind': answer }),
      { kind: 'hello' },
    );
    expect(record.sheet['siding.kind']).toEqual({ status: 'bySide', sides: { left: answer.sides.left } });
  });

  it('keeps not sure and skipped, which fit every kind', () => {
    for (const status of ['notSure', 'skipped'] as const) {
      const now = replaced('roof.covering', { kind: 'several' });
      const { record } = talk(now, at('siding.kind', { ...whole, 'roof.covering': { status } }), {
        kind: 'hello',
      });
      expect(record.sheet['roof.covering']).toEqual({ status });
    }
  });
});

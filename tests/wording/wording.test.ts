import { describe, expect, it } from 'vitest';
import type { Answer, PlainAnswer } from '../../src/answers/answer.ts';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import type { Side } from '../../src/flow/schema/base.ts';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import type { UnitSystem, Value } from '../../src/wording/say.ts';
import { wordReply } from '../../src/wording/word-reply.ts';
import { createWording, type Reader } from '../../src/wording/wording.ts';
import { realProgramme } from '../support/programme.ts';

const { flow, index } = realProgramme().checklist;
const catalogue = catalogueOf(flow);
const limits = index.limits.get('general') ?? new Map();
const texts = { catalogue, questions: index.questions };
const wordingFor = (reader: Partial<Reader> = {}) =>
  createWording(texts, { language: 'en', audience: 'resident', units: 'imperial', limits, ...reader });
const wording = wordingFor();
const given = (value: string | number | readonly string[]): PlainAnswer => ({ status: 'given', value });
const sides = (all: Partial<Record<Side, PlainAnswer>>): Answer => ({ status: 'bySide', sides: all });
const said = (question: string, answer: Answer, reader: Partial<Reader> = {}) =>
  wordingFor(reader).value({ answer, question });

describe('a value in words', () => {
  const values: [Value, string][] = [
    ['as it is', 'as it is'],
    [3, '3'],
    [{ text: 'words/side/left' }, 'left'],
    [{ text: 'read-back.line', values: { label: 'Roof', answer: { text: 'words/yesNo/yes' } } }, 'Roof: yes'],
    [{ metres: 1.524 }, '5 ft'],
    [{ percent: 20 }, '20 %'],
    [{ percent: 11.25 }, '11.3 %'],
    [{ money: 1500, currency: 'USD' }, '$1,500'],
    [{ sides: ['front', 'left', 'back'] }, 'front, left, and back'],
    [{ sides: ['front'] }, 'front'],
    [{ member: { group: 'trees', key: 't4', number: 2 } }, 'tree 2'],
    [{ list: ['a', 'b'], join: 'and' }, 'a and b'],
    [{ list: ['a', 'b', 'c'], join: 'or' }, 'a, b, or c'],
    [{ list: [] }, ''],
    [{ answer: given('tile'), question: 'a question that is gone' }, ''],
  ];

  it.each(values)('%j is said as "%s"', (value, text) => {
    expect(wording.value(value)).toBe(text);
  });
});

describe('a length in words', () => {
  // 1 ft = 0.3048 m and 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  const lengths: [number, UnitSystem, string][] = [
    [0.003175, 'imperial', '1/8 in'],
    [0.003175, 'metric', '3 mm'],
    [0.1524, 'imperial', '6 in'],
    [0.1524, 'metric', '15 cm'],
    [1.524, 'imperial', '5 ft'],
    [1.524, 'metric', '1.5 m'],
    [9.144, 'imperial', '30 ft'],
    [9.144, 'metric', '9 m'],
  ];

  it.each(lengths)('%d m is said to a reader of %s units as "%s"', (metres, units, text) => {
    expect(wordingFor({ units }).length(metres)).toBe(text);
    expect(wordingFor({ units }).value({ metres })).toBe(text);
  });
});

describe('an answer in words', () => {
  it.each([
    ['roof.covering', given('tile'), 'Clay or concrete tile'],
    ['about.lines', given('yes'), 'yes'],
    ['roof.litter', given(['valleys']), 'In the valleys'],
    ['trees.side', given(['front', 'left']), 'front and left'],
    ['trees.count', given(['t1', 't4']), '2'],
    ['trees.count', given([]), '0'],
    ['trees.height', given(6.096), '20 ft'],
    ['about.slope', given(20), '20 %'],
    ['about.year-built', given(1978), '1978'],
    ['about.label', given('Blue house'), 'Blue house'],
    ['roof.covering', { status: 'notSure' }, 'not sure'],
    ['roof.covering', { status: 'skipped' }, 'skipped'],
  ] as const)('to %s is said: %j', (question, answer, text) => {
    expect(said(question, answer)).toBe(text);
  });

  it('is said as the label of its option, for every option there is', () => {
    for (const question of flow.questions) {
      for (const id of optionIds(question)) {
        const list = question.kind === 'several' || question.kind === 'sides';
        expect(said(question.id, given(list ? [id] : id)), `${question.id} ${id}`).not.toBe('');
      }
    }
  });

  it('by side joins the sides that have the same, in the order of the sides', () => {
    const wood = given('wood');
    const stone = given('stone');
    const label = (id: string) => wording.text(`option/siding.kind/${id}`);
    expect(said('siding.kind', sides({ right: wood, front: wood, left: stone }))).toBe(
      `front and right: ${label('wood')}; left: ${label('stone')}`,
    );
    expect(said('siding.kind', sides({ front: wood, left: wood, back: wood, right: wood }))).toBe(
      `${label('wood')}, on all sides`,
    );
    expect(said('siding.kind', sides({ back: wood }))).toBe(`back: ${label('wood')}`);
    expect(said('siding.kind', sides({ front: wood, back: { status: 'notSure' } }))).toBe(
      `front: ${label('wood')}; back: not sure`,
    );
  });

  it('of yes or no by side names the sides with a yes', () => {
    const [yes, no] = [given('yes'), given('no')];
    expect(said('zone0.leaves', sides({ front: yes, left: no, back: yes, right: no }))).toBe(
      'front and back',
    );
    expect(said('zone0.leaves', sides({ front: no, left: no, right: no }))).toBe('on no side');
    expect(said('zone0.leaves', sides({ front: yes, left: { status: 'skipped' } }))).toBe(
      'front: yes; left: skipped',
    );
  });

  it('by side in lengths uses the units of the reader', () => {
    const answer = sides({ front: given(0.003175), left: given(0.003175), back: given(0.1524) });
    expect(said('eaves.gap', answer)).toBe('front and left: 1/8 in; back: 6 in');
    expect(said('eaves.gap', answer, { units: 'metric' })).toBe('front and left: 3 mm; back: 15 cm');
  });
});

describe('text that people typed', () => {
  const hostile = '**bold** <b>x</b> {limit} [l](http://x) \u001b[31m';

  it('is escaped as the reader wants, and never read as a message of the flow', () => {
    const escaping = (typed: string) => typed.replace(/[<>*{}[\]]/g, (sign) => `\\${sign}`);
    expect(said('about.label', given(hostile), { escape: escaping })).toBe(escaping(hostile));
    expect(said('about.label', given(hostile))).toBe(hostile);
  });

  it('stands in a sentence as it was typed', () => {
    const answer: Value = { answer: given('{zone0} # {x, plural, one {a}}'), question: 'about.label' };
    expect(wording.text('note.taken', { answer })).toBe('Noted: {zone0} # {x, plural, one {a}}.');
  });
});

describe('a text of the flow', () => {
  it('says the limits of the reader’s place', () => {
    const places = [...index.limits.values()];
    const saidAt = new Set(
      places.map((own) => wordingFor({ limits: own }).text('question/vents.high-mesh/good')),
    );
    expect(saidAt.size).toBeGreaterThan(1);
  });

  it('has words of its own for an audience where it needs them, and the resident’s where not', () => {
    const id = 'question/roof.covering/look';
    expect(wordingFor({ audience: 'trainee' }).text(id)).not.toBe(wording.text(id));
    expect(wordingFor({ audience: 'volunteer' }).text(id)).toBe(wording.text(id));
  });

  it('counts in words', () => {
    const kept = (answered: number) => wording.text('walk.welcome-back', { answered });
    expect(kept(1)).toContain('1 answer is kept');
    expect(kept(2)).toContain('2 answers are kept');
  });

  it('that does not exist is a fault, and can be asked for beforehand', () => {
    expect(wording.has('words/side/left')).toBe(true);
    expect(wording.has('words/side/middle')).toBe(false);
    expect(() => wording.text('words/side/middle')).toThrow('words/side/middle');
  });

  it('goes into a reply without its marks of emphasis', () => {
    const marked = new Map(catalogue).set('x', 'Stay **on the ground**.\nAlways.');
    const plain = createWording({ ...texts, catalogue: marked }, wording.reader);
    const { blocks } = wordReply({ parts: [{ kind: 'say', tone: 'plain', text: 'x' }] }, plain);
    expect(blocks).toEqual([{ kind: 'say', tone: 'plain', lines: ['Stay on the ground.', 'Always.'] }]);
  });
});

import { describe, expect, it } from 'vitest';
import type { PlainAnswer } from '../../src/answers/answer.ts';
import { compileCondition, type Facts } from '../../src/answers/condition.ts';
import type { LimitInForce } from '../../src/answers/limits.ts';
import { all, any, not, type Truth } from '../../src/answers/truth.ts';
import type { Question } from '../../src/flow/flow.ts';
import type { Side } from '../../src/flow/schema/base.ts';
import type { RawCondition } from '../../src/flow/schema/condition.ts';

const truths: readonly Truth[] = ['yes', 'no', 'unknown'];

describe('three-valued logic', () => {
  // Kleene's strong tables (S. C. Kleene, Introduction to Metamathematics, 1952, section 64), from memory.
  const conjunction = {
    yes: ['yes', 'no', 'unknown'],
    no: ['no', 'no', 'no'],
    unknown: ['unknown', 'no', 'unknown'],
  };
  const disjunction = {
    yes: ['yes', 'yes', 'yes'],
    no: ['yes', 'no', 'unknown'],
    unknown: ['yes', 'unknown', 'unknown'],
  };

  it.each(truths.flatMap((a) => truths.map((b, column) => [a, b, column] as const)))(
    'joins %s and %s',
    (a, b, column) => {
      expect(all([a, b], (one) => one)).toBe(conjunction[a][column]);
      expect(any([a, b], (one) => one)).toBe(disjunction[a][column]);
      expect(not(all([a, b], (one) => one))).toBe(any([a, b], not));
    },
  );

  it('is yes for all of nothing and no for any of nothing', () => {
    expect([all([], () => 'no'), any([], () => 'yes')]).toEqual(['yes', 'no']);
  });
});

type Known = PlainAnswer | 'offPath' | undefined;
const given = (value: string | number | readonly string[]): Known => ({ status: 'given', value });
const notSure: Known = { status: 'notSure' };
const skipped: Known = { status: 'skipped' };
const unanswered: Known = undefined;

const question = (id: string, kind: Question['kind']) => ({ id, kind }) as Question;
const questions = new Map(
  (['choice', 'yesNo', 'several', 'sides', 'length', 'number', 'slope', 'count'] as const).map((kind) => [
    kind,
    question(kind, kind),
  ]),
);
const limit = (id: string, value: number | boolean, dimension: LimitInForce['dimension']) =>
  ({ id, value, dimension, rulebook: 'general', limit: { value, what: id, source: 'x' } }) as LimitInForce;
const limits = new Map([
  ['five', limit('five', 1.524, 'length')],
  ['banned', limit('banned', true, 'flag')],
  ['storeys', limit('storeys', 2, 'number')],
]);

function factsWith(answer: Known, more: Partial<Facts> = {}): Facts {
  return {
    answer: () => answer,
    limit: (id) => limits.get(id),
    finding: () => 'unknown',
    computed: () => undefined,
    sides: ['front', 'back'],
    members: () => [],
    memberSides: () => [],
    ...more,
  };
}

function truthOf(raw: RawCondition, answer: Known, more: Partial<Facts> = {}): Truth {
  return compileCondition(raw, (id) => questions.get(id as never))(factsWith(answer, more), {});
}

const feet = (count: number) => given(count * 0.3048);

describe('a condition about an answer', () => {
  const conditions: [RawCondition, Known, Known][] = [
    [{ question: 'choice', is: 'a' }, given('a'), given('b')],
    [{ question: 'choice', oneOf: ['a', 'b'] }, given('b'), given('c')],
    [{ question: 'yesNo', is: 'yes' }, given('yes'), given('no')],
    [{ question: 'several', is: 'a' }, given(['b', 'a']), given(['b'])],
    [{ question: 'several', oneOf: ['a', 'c'] }, given(['c']), given(['b', 'd'])],
    [{ question: 'sides', is: 'front' }, given(['front', 'left']), given(['back'])],
    [{ question: 'length', atLeast: '5 ft' }, feet(5), feet(4.99)],
    [{ question: 'length', atMost: '5 ft' }, feet(5), feet(5.01)],
    [{ question: 'length', above: '5 ft' }, feet(5.01), feet(5)],
    [{ question: 'length', below: '5 ft' }, feet(4.99), feet(5)],
    [{ question: 'length', below: { limit: 'five' } }, feet(4.99), feet(5)],
    [{ question: 'length', atLeast: { limit: 'five' } }, feet(5), feet(4)],
    [{ question: 'number', below: 1978 }, given(1977), given(1978)],
    [{ question: 'slope', atLeast: '20 %' }, given(20), given(19.9)],
    [{ question: 'count', atLeast: 1 }, given(['t1']), given([])],
    [{ question: 'count', above: 1 }, given(['t1', 't2']), given(['t1'])],
  ];

  it.each(conditions)('is yes, no or unknown by the answer: %j', (raw, yes, no) => {
    expect(truthOf(raw, yes)).toBe('yes');
    expect(truthOf(raw, no)).toBe('no');
    for (const answer of [notSure, skipped, unanswered]) expect(truthOf(raw, answer)).toBe('unknown');
    expect(truthOf(raw, 'offPath')).toBe('no');
  });

  it.each(conditions)('turns round under not, and unknown stays: %j', (raw, yes, no) => {
    expect(truthOf({ not: raw }, yes)).toBe('no');
    expect(truthOf({ not: raw }, no)).toBe('yes');
    expect(truthOf({ not: raw }, unanswered)).toBe('unknown');
    expect(truthOf({ not: raw }, 'offPath')).toBe('yes');
  });

  it.each(conditions)('takes unknown as it is told to: %j', (raw, yes, no) => {
    for (const whenUnknown of ['yes', 'no'] as const) {
      expect(truthOf({ ...raw, whenUnknown }, notSure)).toBe(whenUnknown);
      expect(truthOf({ ...raw, whenUnknown }, yes)).toBe('yes');
      expect(truthOf({ ...raw, whenUnknown }, no)).toBe('no');
      expect(truthOf({ ...raw, whenUnknown }, 'offPath')).toBe('no');
    }
  });

  it.each([
    [given('a'), 'yes'],
    [notSure, 'no'],
    [skipped, 'no'],
    [unanswered, 'no'],
    ['offPath', 'no'],
  ] as const)('is never unknown under answered: %j', (answer, truth) => {
    expect(truthOf({ answered: 'choice' }, answer)).toBe(truth);
  });

  it('takes feet that went through metres and back as the same feet', () => {
    for (const count of [1, 3, 5, 6, 7, 10, 18, 30, 100]) {
      const metres = given((count * 12 * 25.4) / 1000);
      expect(truthOf({ question: 'length', atLeast: `${count} ft` }, metres), `${count} ft`).toBe('yes');
      expect(truthOf({ question: 'length', below: `${count} ft` }, metres), `${count} ft`).toBe('no');
    }
  });

  it('never compares a limit of the wrong kind, nor one that is not there', () => {
    expect(truthOf({ question: 'length', below: { limit: 'banned' } }, feet(1))).toBe('unknown');
    expect(truthOf({ question: 'length', below: { limit: 'nowhere' } }, feet(1))).toBe('unknown');
  });
});

describe('a condition about a limit, a finding or a computation', () => {
  it.each([
    [{ limit: 'banned', is: true }, 'yes'],
    [{ limit: 'banned', is: 'yes' }, 'yes'],
    [{ limit: 'banned', is: false }, 'no'],
    [{ limit: 'storeys', atLeast: 2 }, 'yes'],
    [{ limit: 'storeys', above: 2 }, 'no'],
    [{ limit: 'nowhere', is: true }, 'unknown'],
    [{ limit: 'nowhere', atLeast: 1 }, 'unknown'],
    [{ limit: 'banned', atLeast: 1 }, 'unknown'],
  ] as const)('compares the limit in force: %j', (raw, truth) => {
    expect(truthOf(raw as RawCondition, unanswered)).toBe(truth);
  });

  it.each(truths)('takes a finding as it is: %s', (truth) => {
    expect(truthOf({ finding: 'x' }, unanswered, { finding: () => truth })).toBe(truth);
  });

  it('compares what was computed, and knows nothing where it could not be', () => {
    expect(truthOf({ computed: 'x', above: 2 }, unanswered, { computed: () => 3 })).toBe('yes');
    expect(truthOf({ computed: 'x', above: 2 }, unanswered, { computed: () => 1 })).toBe('no');
    expect(truthOf({ computed: 'x', above: 2 }, unanswered)).toBe('unknown');
  });
});

describe('a condition over sides or members', () => {
  const bySide = (front: Known, back: Known): Partial<Facts> => ({
    answer: (_, spot) => (spot.side === 'front' ? front : back),
  });
  const states = { yes: given('a'), no: given('b'), unknown: notSure } as const;

  it.each(truths.flatMap((a) => truths.map((b) => [a, b] as const)))('joins the sides: %s and %s', (a, b) => {
    const where: RawCondition = { question: 'choice', is: 'a' };
    const facts = bySide(states[a], states[b]);
    expect(truthOf({ some: 'side', where }, unanswered, facts)).toBe(any([a, b], (one) => one));
    expect(truthOf({ every: 'side', where }, unanswered, facts)).toBe(all([a, b], (one) => one));
  });

  const trees: Partial<Facts> = {
    members: () => ['t1', 't2'],
    memberSides: (_, member): readonly Side[] => (member === 't1' ? ['front'] : ['back', 'left']),
    answer: (_, spot) => (spot.member === 't1' ? given('a') : given('b')),
  };
  const where: RawCondition = { question: 'choice', is: 'a' };

  it('joins the members of a group', () => {
    expect(truthOf({ some: 'trees', where }, unanswered, trees)).toBe('yes');
    expect(truthOf({ every: 'trees', where }, unanswered, trees)).toBe('no');
  });

  it('looks only at the members that stand on the side it is asked for', () => {
    const test = compileCondition({ some: 'trees', where }, (id) => questions.get(id as never));
    expect(test(factsWith(unanswered, trees), { side: 'front' })).toBe('yes');
    expect(test(factsWith(unanswered, trees), { side: 'back' })).toBe('no');
    expect(test(factsWith(unanswered, trees), { side: 'right' })).toBe('no');
  });

  it('is no for some, and yes for every, where there is no member', () => {
    expect(truthOf({ some: 'trees', where }, unanswered)).toBe('no');
    expect(truthOf({ every: 'trees', where }, unanswered)).toBe('yes');
  });
});

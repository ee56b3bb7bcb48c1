import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, AnswerSheet } from '../../src/answers/answer.ts';
import { indexFlow } from '../../src/answers/flow-index.ts';
import { isOpen, layOutPath, openSides, pathOf } from '../../src/answers/path.ts';
import { assess } from '../../src/assess/assess.ts';
import { realProgramme } from '../support/programme.ts';
import { oneOf, randomAnswer, randomSheet, seededRandom } from '../support/random-answers.ts';
import { smallFlow } from '../support/small-flow.ts';

const given = (value: string | number | readonly string[]): Answer => ({ status: 'given', value });
const small = indexFlow(smallFlow());
const keys = (sheet: AnswerSheet) => layOutPath(small, sheet).steps.map((step) => step.key);

describe('the path of a walk', () => {
  it('asks what the answers call for, in the order of the walk', () => {
    expect(keys({})).toEqual(['about.place', 'about.slope', 'roof.covering', 'roof.gap', 'trees.count']);
    expect(keys({ 'roof.covering': given('wood') })).toContain('roof.treated');
    expect(keys({ 'roof.covering': given('tile') })).not.toContain('roof.treated');
    expect(keys({ 'roof.covering': { status: 'notSure' } })).not.toContain('roof.treated');
  });

  it('asks all about one member before the next, under keys that stay', () => {
    expect(keys({ 'trees.count': given(['t2', 't5']) }).slice(-4)).toEqual([
      'trees/t2/trees.side',
      'trees/t2/trees.distance',
      'trees/t5/trees.side',
      'trees/t5/trees.distance',
    ]);
  });

  it('waits for the sides that have no answer yet, whatever the others say', () => {
    const part: AnswerSheet = {
      'roof.gap': { status: 'bySide', sides: { front: { status: 'notSure' }, left: given(0.01) as never } },
    };
    const step = layOutPath(small, part).byKey.get('roof.gap');
    expect(step && openSides(step, part)).toEqual(['back', 'right']);
    expect(step && isOpen(step, part)).toBe(true);
    const whole: AnswerSheet = { 'roof.gap': { status: 'skipped' } };
    expect(step && isOpen(step, whole)).toBe(false);
  });

  it('is laid out once for a sheet', () => {
    const sheet: AnswerSheet = {};
    expect(pathOf(small, sheet)).toBe(pathOf(small, sheet));
    expect(pathOf(small, { ...sheet })).not.toBe(pathOf(small, sheet));
  });
});

const { checklist } = realProgramme();
const { index } = checklist;

/** A whole sheet on which answers were changed afterwards, so that others stand there for nothing. */
function withHidden(seed: number): AnswerSheet {
  const random = seededRandom(seed);
  let sheet = randomSheet(index, random);
  for (let count = 0; count < 6; count++) {
    const step = oneOf(pathOf(index, sheet).steps, random);
    sheet = { ...sheet, [step.key]: randomAnswer(index, {}, step, random) };
    sheet = randomSheet(index, random, undefined, sheet);
  }
  return sheet;
}

/** The same house with only what is asked of it: answers off the path, and for sides off it, are taken out. */
function onPathOnly(sheet: AnswerSheet): AnswerSheet {
  const { byKey } = layOutPath(index, sheet);
  const entries = Object.entries(sheet).flatMap(([key, answer]): [string, Answer][] => {
    const step = byKey.get(key);
    if (!step) return [];
    if (answer.status !== 'bySide') return [[key, answer]];
    const sides = Object.entries(answer.sides).filter(([side]) => step.sides?.some((one) => one === side));
    return [[key, { status: 'bySide', sides: Object.fromEntries(sides) }]];
  });
  return Object.fromEntries(entries);
}

function resultOf(sheet: AnswerSheet) {
  const { found, elements, waysIn, ranked, exposure } = assess(checklist, sheet);
  return {
    path: layOutPath(index, sheet).steps.map(({ key, sides }) => [key, sides]),
    found: found.map((one) => one.id),
    elements: elements.map((one) => one.id),
    ways: waysIn.map((one) => one.id),
    jobs: ranked.map(({ proposal, share, alone }) => [
      proposal.id,
      proposal.lane,
      proposal.cautions,
      share,
      alone,
    ]),
    exposure,
  };
}

describe('answers that are not asked for', () => {
  it('count for nothing: all answers give the same as those on the path', () => {
    let hidden = 0;
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const sheet = withHidden(seed);
        const asked = onPathOnly(sheet);
        hidden += Object.keys(sheet).length - Object.keys(asked).length;
        expect(resultOf(sheet)).toEqual(resultOf(asked));
      }),
      { numRuns: 60 },
    );
    expect(hidden).toBeGreaterThan(10);
  });

  it('count for nothing in a group whose count is not asked', () => {
    const flow = smallFlow((_, text) =>
      text.replace(
        '    counts: trees\n',
        '    counts: trees\n    when: { question: roof.covering, is: wood, whenUnknown: no }\n',
      ),
    );
    const branched = indexFlow(flow);
    const sheet: AnswerSheet = {
      'roof.covering': given('tile'),
      'trees.count': given(['t1']),
      'trees/t1/trees.side': given(['front']),
      'trees/t1/trees.distance': given(1),
    };
    const { facts, steps } = layOutPath(branched, sheet);
    expect(steps.some((step) => step.group === 'trees')).toBe(false);
    expect(facts.members('trees')).toEqual([]);
    expect(layOutPath(branched, { ...sheet, 'roof.covering': given('wood') }).facts.members('trees')).toEqual(
      ['t1'],
    );
  });
});

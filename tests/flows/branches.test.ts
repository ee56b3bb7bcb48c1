import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isOpen, layOutPath } from '../../src/answers/path.ts';
import { questionsIn } from '../../src/flow/checks/check-questions.ts';
import { answersThatMake, answersThatReach } from '../../src/flow/reach.ts';
import { realProgramme } from '../support/programme.ts';
import { randomSheet, seededRandom } from '../support/random-answers.ts';
import { sheetFor } from '../support/sheet-for.ts';

const { index } = realProgramme().checklist;
const { flow, questions } = index;
const titled = flow.questions.map((one) => [one.id, one] as const);
const branched = titled.filter(([, one]) => one.when !== undefined);
const bySide = titled.filter(([, one]) => one.where !== undefined);

describe('the questions of the real walk', () => {
  it.each(titled)('can be reached by answers: %s', (id, question) => {
    const wanted = answersThatReach(question, questions);
    expect(wanted).toBeDefined();
    const { steps } = layOutPath(index, sheetFor(index, wanted ?? new Map()));
    expect(steps.some((step) => step.question.id === id)).toBe(true);
  });

  it.each(branched)('are asked where their branch holds and not where it does not: %s', (id, question) => {
    for (const want of [true, false]) {
      const wanted = question.when && answersThatMake(question.when, want, questions);
      expect(wanted, `${want}`).toBeDefined();
      const reached = want ? answersThatReach(question, questions) : wanted;
      const { steps } = layOutPath(index, sheetFor(index, reached ?? new Map()));
      expect(
        steps.some((step) => step.question.id === id),
        `${want}`,
      ).toBe(want);
    }
  });

  it.each(bySide)(
    'are asked at sides where their branch holds, and at none where it holds nowhere: %s',
    (id, question) => {
      for (const want of [true, false]) {
        const wanted = question.where && answersThatMake(question.where, want, questions);
        expect(wanted, `${want}`).toBeDefined();
        const reached = want ? answersThatReach(question, questions) : wanted;
        const step = layOutPath(index, sheetFor(index, reached ?? new Map())).byKey.get(id);
        expect((step?.sides?.length ?? 0) > 0, `${want}`).toBe(want);
      }
    },
  );

  it('do what their branch says when an earlier answer is not sure', () => {
    for (const [id, { when }] of branched) {
      if (!when || questionsIn(when).some((read) => questions.get(read)?.of)) continue;
      const wanted =
        answersThatReach({ ...(questions.get(id) as (typeof titled)[number][1]) }, questions) ?? new Map();
      const unsure = new Map([...wanted].filter(([read]) => !questionsIn(when).includes(read)));
      const { steps, byKey } = layOutPath(index, sheetFor(index, unsure));
      const readOnPath = questionsIn(when).every(
        (read) => byKey.has(read) || steps.some((step) => step.question.id === read),
      );
      if (!readOnPath || when.whenUnknown === undefined) continue;
      expect(
        steps.some((step) => step.question.id === id),
        id,
      ).toBe(when.whenUnknown === 'yes');
    }
  });

  it('come to an end on every path', () => {
    const most =
      flow.questions.length +
      flow.groups.reduce(
        (sum, group) => sum + group.max * flow.questions.filter((one) => one.of === group.id).length,
        0,
      );
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const sheet = randomSheet(index, seededRandom(seed));
        const { steps } = layOutPath(index, sheet);
        expect(steps.filter((step) => isOpen(step, sheet))).toEqual([]);
        expect(steps.length).toBeLessThanOrEqual(most);
      }),
      { numRuns: 100 },
    );
  });

  it('ask nothing at all beside the main path of a house about which nothing is known but that it stands', () => {
    const { steps } = layOutPath(index, sheetFor(index, new Map()));
    expect(steps.length).toBeGreaterThan(40);
    expect(steps.filter((step) => step.group !== undefined)).toEqual([]);
  });
});

describe('lengths and options of the real walk', () => {
  it('name the unsafe end of every length, and what a bare number is in', () => {
    const lengths = flow.questions.filter((one) => one.kind === 'length');
    expect(lengths.length).toBeGreaterThan(10);
    for (const one of lengths)
      expect([one.unsafeEnd, one.bare?.imperial, one.bare?.metric], one.id).not.toContain(undefined);
  });

  it('give every question the ways to look, to know what is good, and to ask on the telephone', () => {
    for (const one of flow.questions) {
      for (const text of [
        one.ask,
        one.look,
        one.good,
        one.why,
        one.short,
        one.call.say,
        one.call.listen,
        one.call.cannotTell,
      ])
        expect(text, one.id).toBeTruthy();
    }
  });
});

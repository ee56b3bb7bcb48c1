import { describe, expect, it } from 'vitest';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import { createWording } from '../../src/wording/wording.ts';
import { realProgramme } from '../support/programme.ts';
import { countSyllables, countText, gradeOf } from './syllables.ts';

describe('the reading grade', () => {
  // Published example of the Flesch-Kincaid grade formula: 13 words, 1 sentence, 24 syllables -> 11.3.
  it('follows its published example on counts', () => {
    expect(gradeOf({ words: 13, sentences: 1, syllables: 24 })).toBeCloseTo(11.3, 1);
  });

  // Counted by hand.
  it.each([
    [
      1,
      'roof edge leaves moved burned closed through breathe pipes tools straight stairs whose where gaps screens size clothes fire tile hour',
    ],
    [
      2,
      'gutter gravel window attic branches burning needed closes houses table handle people siding causes cushion action pressure ember quickly places garage measures wider neighbour station needle safely',
    ],
    [
      3,
      'evergreen covering resistant property animal flammable another manager insurer radiant area deposit',
    ],
    [4, 'vegetation combination materials environment electrical combustible'],
    [5, 'noncombustible evaporative'],
  ] as const)('counts words of %i syllables', (count, words) => {
    for (const word of words.split(' ')) expect(countSyllables(word), word).toBe(count);
  });

  it.each([
    ['The roof is old. Look up!', { words: 6, sentences: 2, syllables: 6 }],
    ['Leave 1/8 in, no more: it matters.', { words: 7, sentences: 2, syllables: 8 }],
    ['A factory-built home', { words: 4, sentences: 1, syllables: 6 }],
  ])('counts sentences and words of "%s"', (text, counts) => {
    expect(countText(text)).toEqual(counts);
  });
});

describe('what residents read', () => {
  const { flow, index } = realProgramme().checklist;
  const catalogue = catalogueOf(flow);
  const limits = index.limits.get('general') ?? new Map();
  const wording = createWording(
    { catalogue, questions: index.questions },
    { language: 'en', audience: 'resident', units: 'imperial', limits },
  );
  const plain = /^question\/[^/]+\/(?:ask|look|good|why)$|^action\/[^/]+\/(?:do|why|how\.\d+)$/;
  const graded = [...catalogue.keys()]
    .filter((id) => plain.test(id))
    .map((id) => ({ id, text: wording.text(id, { side: 'left', sides: 'left', member: 'tree 1' }) }));

  it('is at most of the eighth grade, in every question and every job', () => {
    expect(graded.length).toBeGreaterThan(900);
    const over = graded
      .map(({ id, text }) => ({ id, text, grade: gradeOf(countText(text)) }))
      .filter(({ grade }) => grade > 8);
    expect(over).toEqual([]);
  });

  it('is of the fifth grade or less on average', () => {
    const grades = graded.map(({ text }) => gradeOf(countText(text)));
    expect(grades.reduce((sum, grade) => sum + grade, 0) / grades.length).toBeLessThan(5);
  });
});

import { describe, expect, it } from 'vitest';
import type { Answer, AnswerSheet } from '../../src/answers/answer.ts';
import { isOpen, layOutPath } from '../../src/answers/path.ts';
import { assess } from '../../src/assess/assess.ts';
import { optionIds } from '../../src/flow/checks/check-condition.ts';
import { sideNames } from '../../src/flow/schema/base.ts';
import { makeHouse } from '../../src/practice/house/make-house.ts';
import type { LevelName } from '../../src/practice/schema/practice-file.ts';
import { realPractice } from './practice-for-tests.ts';

const levels: readonly LevelName[] = ['easy', 'ordinary', 'hard'];
const { maker, programme, content } = realPractice();
const { index, flow } = programme.checklist;
const houses = Array.from({ length: 500 }, (_, number) =>
  makeHouse(maker, number + 1, levels[number % 3] ?? 'easy'),
);

const at = (sheet: AnswerSheet, id: string, side?: (typeof sideNames)[number]) => {
  const answer = sheet[id];
  const one = side !== undefined && answer?.status === 'bySide' ? answer.sides[side] : answer;
  return one?.status === 'given' ? one.value : undefined;
};
const has = (sheet: AnswerSheet, id: string, value: string, side?: (typeof sideNames)[number]) => {
  const found = at(sheet, id, side);
  return typeof found === 'object' ? found.includes(value) : found === value;
};

describe('made-up houses', () => {
  it('answer every question on the path, and none off it', () => {
    for (const { sheet, name } of houses) {
      const path = layOutPath(index, sheet);
      expect(
        path.steps.filter((step) => isOpen(step, sheet)).map((step) => step.key),
        name,
      ).toEqual([]);
      expect(
        Object.keys(sheet).filter((key) => !path.byKey.has(key)),
        name,
      ).toEqual([]);
      for (const step of path.steps) {
        const answer = sheet[step.key] as Answer;
        if (step.sides)
          expect(
            answer.status === 'bySide' && Object.keys(answer.sides).sort(),
            `${name} ${step.key}`,
          ).toEqual([...step.sides].sort());
        else expect(answer.status).not.toBe('bySide');
      }
    }
  });

  it('give only answers that the questions know, and know all of them', () => {
    for (const { sheet, name } of houses) {
      for (const step of layOutPath(index, sheet).steps) {
        const answer = sheet[step.key] as Answer;
        const plain = answer.status === 'bySide' ? Object.values(answer.sides) : [answer];
        for (const one of plain) {
          expect(one.status, `${name} ${step.key}`).not.toBe('notSure');
          if (one.status !== 'given' || typeof one.value === 'number') continue;
          const values = typeof one.value === 'string' ? [one.value] : one.value;
          const known = [
            ...optionIds(step.question),
            ...sideNames,
            ...layOutPath(index, sheet).facts.members(step.question.counts ?? ''),
          ];
          expect(
            values.filter((value) => !known.includes(value)),
            `${name} ${step.key}`,
          ).toEqual([]);
          const alone =
            step.question.options?.filter((option) => option.alone && values.includes(option.id)) ?? [];
          if (alone.length > 0) expect(values).toHaveLength(1);
        }
      }
    }
  });

  it('have no gutter guards without gutters', () => {
    for (const { sheet, name } of houses)
      for (const side of sideNames)
        if (has(sheet, 'roof.gutters', 'none', side))
          expect(at(sheet, 'roof.gutter-guards', side), name).toBeUndefined();
  });

  it.each([
    [
      'a deck has a side',
      (sheet: AnswerSheet) =>
        !has(sheet, 'about.attached', 'deck') ||
        sideNames.some((side) => has(sheet, 'about.deck-sides', 'yes', side)),
    ],
    [
      'a gable vent has a side',
      (sheet: AnswerSheet) =>
        has(sheet, 'vents.kinds', 'gable') ===
        sideNames.some((side) => has(sheet, 'vents.high', 'gable', side)),
    ],
    [
      'an eave vent needs an eave',
      (sheet: AnswerSheet) =>
        sideNames.every(
          (side) => !(has(sheet, 'vents.high', 'eave', side) && has(sheet, 'eaves.kind', 'none', side)),
        ),
    ],
    [
      'a vented attic is not sealed',
      (sheet: AnswerSheet) =>
        !(
          has(sheet, 'vents.attic', 'sealed') &&
          ['gable', 'eave', 'ridge', 'roof'].some((kind) => has(sheet, 'vents.kinds', kind))
        ),
    ],
    [
      'a crawl space is no slab',
      (sheet: AnswerSheet) =>
        !(has(sheet, 'vents.floor', 'slab') && has(sheet, 'vents.kinds', 'under-floor')),
    ],
    [
      'a manufactured home has one storey',
      (sheet: AnswerSheet) =>
        !has(sheet, 'about.building', 'manufactured') || has(sheet, 'about.storeys', 'one'),
    ],
    [
      'the garage door is at one side',
      (sheet: AnswerSheet) =>
        sheet['openings.garage-sides'] === undefined ||
        sideNames.filter((side) => has(sheet, 'openings.garage-sides', 'yes', side)).length === 1,
    ],
    [
      'a shrub before a vent needs a vent',
      (sheet: AnswerSheet) =>
        sideNames.every(
          (side) =>
            !has(sheet, 'zone0.plant-under', 'vent', side) ||
            has(sheet, 'vents.high', 'gable', side) ||
            has(sheet, 'vents.high', 'eave', side) ||
            has(sheet, 'vents.low', 'yes', side),
        ),
    ],
    [
      'no tree is near a wire where there is none',
      (sheet: AnswerSheet) =>
        !has(sheet, 'about.lines', 'no') ||
        !Object.entries(sheet).some(
          ([key, answer]) =>
            key.endsWith('/trees.lines') && answer.status === 'given' && answer.value === 'yes',
        ),
    ],
  ])('are consistent: %s', (_, holds) => {
    expect(houses.filter(({ sheet }) => !holds(sheet)).map(({ name }) => name)).toEqual([]);
  });

  it('have no rotten wood in walls without wood', () => {
    for (const { sheet, name } of houses)
      for (const side of sideNames)
        if (['stone', 'vinyl'].some((kind) => has(sheet, 'siding.kind', kind, side)))
          expect(has(sheet, 'siding.condition', 'rotten', side), name).toBe(false);
  });

  it('never have a branch above the top of its tree', () => {
    for (const { sheet, name } of houses)
      for (const key of Object.keys(sheet).filter((one) => one.endsWith('/trees.height'))) {
        const height = at(sheet, key);
        const branch = at(sheet, key.replace('trees.height', 'trees.lowest-branch'));
        if (typeof height === 'number' && typeof branch === 'number')
          expect(branch, name).toBeLessThan(height);
      }
  });

  it('are the same for the same seed, and others for others', () => {
    expect(makeHouse(maker, 41, 'hard')).toEqual(makeHouse(maker, 41, 'hard'));
    expect(makeHouse(maker, 41, 'hard').sheet).not.toEqual(makeHouse(maker, 42, 'hard').sheet);
  });

  it('bring up nearly every finding somewhere', () => {
    const met = new Set(
      houses.flatMap(({ sheet }) => assess(programme.checklist, sheet).found.map((one) => one.finding.id)),
    );
    const never = flow.findings.filter((finding) => !met.has(finding.id)).map((finding) => finding.id);
    // Findings of stricter places cannot come under general rules, a garage door that shows light has a side here,
    // and treated shakes with proof of it are rare on purpose.
    const cannot = ['openings.garage-gap-somewhere', 'roof.wood-treated', 'vents.eave-ban'];
    expect(never.filter((id) => !id.includes('over-rule') && !cannot.includes(id))).toEqual([]);
  });

  it('stand under the rules of the place that is asked for', () => {
    const house = makeHouse(maker, 3, 'ordinary', 'tamber-county');
    expect(layOutPath(index, house.sheet).rulebook).toBe('tamber-county');
    expect(content.house.levels[house.level].tempers).toContain(house.temper);
  });
});

describe('how hard a house is', () => {
  const hundred = (level: LevelName) =>
    Array.from({ length: 100 }, (_, number) => makeHouse(maker, number + 1, level));
  const houseOf = { easy: hundred('easy'), ordinary: hundred('ordinary'), hard: hundred('hard') };
  const found = (level: LevelName) =>
    houseOf[level].map(({ sheet }) => assess(programme.checklist, sheet).found);
  const foundAt = { easy: found('easy'), ordinary: found('ordinary'), hard: found('hard') };
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length / 2] ?? 0;
  const places = (level: LevelName) => foundAt[level].map((list) => list.length);
  const kinds = (level: LevelName) =>
    foundAt[level].map((list) => new Set(list.map((one) => one.finding.id)).size);

  it.each([
    ['findings at their places', places],
    ['kinds of findings', kinds],
  ])(
    'shows in the number of %s: 6 to 10 in the middle of the easy ones, and more at each level',
    (_, count) => {
      const [easy, ordinary, hard] = levels.map(count);
      for (const middle of [mean, median]) {
        expect(middle(easy ?? [])).toBeGreaterThanOrEqual(6);
        expect(middle(easy ?? [])).toBeLessThanOrEqual(10);
        expect(middle(ordinary ?? [])).toBeGreaterThan(2 * middle(easy ?? []));
        expect(middle(hard ?? [])).toBeGreaterThan(1.3 * middle(ordinary ?? []));
      }
    },
  );

  it('keeps every house in the range of its level', () => {
    for (const level of levels) {
      const { findings } = content.house.levels[level];
      if (findings === undefined) continue;
      expect(Math.min(...places(level)), level).toBeGreaterThanOrEqual(findings.atLeast);
      expect(Math.max(...places(level)), level).toBeLessThanOrEqual(findings.atMost);
    }
  });

  it('shows in what has to be measured: close to the limit at hard houses, well clear at easy ones', () => {
    // 5 ft asked of branches, 6 in of the base of siding, 4 in of dry grass, 6 ft of the lowest branch.
    const limits: [RegExp, number, number][] = [
      [/trees\.to-roof$/, 5 * 0.3048, 0.31],
      [/siding\.base$/, 6 * 0.0254, 0.026],
      [/zone1\.grass$/, 4 * 0.0254, 0.026],
      [/trees\.lowest-branch$/, 6 * 0.3048, 0.31],
    ];
    const share = (level: LevelName) => {
      const near = houseOf[level].flatMap(({ sheet }) =>
        Object.entries(sheet).flatMap(([key, answer]) => {
          const limit = limits.find(([pattern]) => pattern.test(key));
          const plain = answer.status === 'bySide' ? Object.values(answer.sides) : [answer];
          return limit === undefined
            ? []
            : plain.flatMap((one) =>
                one?.status === 'given' && typeof one.value === 'number'
                  ? [Number(Math.abs(one.value - limit[1]) <= limit[2])]
                  : [],
              );
        }),
      );
      expect(near.length).toBeGreaterThan(100);
      return mean(near);
    };
    expect(share('easy')).toBeLessThan(0.15);
    expect(share('ordinary')).toBeLessThan(0.4);
    expect(share('hard')).toBeGreaterThan(0.6);
  });

  it('shows in what catches the eye: nothing misleading at easy houses, mostly look-alikes at hard ones', () => {
    const lookalikes = new Set(
      content.house.distractors.flatMap((one) => (one.looksLike === undefined ? [] : [one.id])),
    );
    const misleading = (level: LevelName) =>
      houseOf[level].map(
        ({ distractors }) =>
          Object.values(distractors)
            .flat()
            .filter((id) => lookalikes.has(id)).length,
      );
    expect(Math.max(...misleading('easy'))).toBe(0);
    expect(mean(misleading('ordinary'))).toBeGreaterThan(1);
    expect(Math.min(...misleading('hard'))).toBeGreaterThanOrEqual(8);
  });
});

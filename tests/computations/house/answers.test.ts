import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { computedNumber } from '../../../src/computations/house/computed.ts';
import { COMPUTED_IDS, HOUSE_IDS } from '../../../src/computations/house/computed-ids.ts';
import type { House } from '../../../src/computations/house/house.ts';
import { allOutcomes, outcomeAt } from '../../../src/computations/house/outcome.ts';
import { HOUSE_COMPUTATIONS } from '../../../src/computations/house/registry.ts';
import { COMPUTATIONS } from '../../../src/computations/work-out/index.ts';
import { realProgramme } from '../../support/programme.ts';
import { changed, demoText, house, inUnit, resultAt, sheetOf } from './house-of.ts';

const names = [
  'fernhollow-lane-12',
  'kiln-road-3',
  'old-flume-road-27',
  'mill-yard-8',
  'larkspur-way-41',
  'weir-cottages-5',
];
const kiln = demoText('kiln-road-3');
const flume = demoText('old-flume-road-27');

const found = (text: string) => assess(realProgramme().checklist, sheetOf(text)).found.map(({ id }) => id);

describe('the computations of a house', () => {
  it('are those that have an id, each runs a computation that is there', () => {
    expect([...HOUSE_COMPUTATIONS.keys()]).toEqual([...HOUSE_IDS]);
    for (const { runs } of HOUSE_COMPUTATIONS.values())
      expect(
        COMPUTATIONS.some(({ id }) => id === runs),
        runs,
      ).toBe(true);
  });

  it('read only questions and limits that the walk has', () => {
    const { index } = realProgramme().checklist;
    const asked = new Set<string>();
    const watched = (real: House): House => ({
      ...real,
      question: (id) => {
        asked.add(`question ${id} ${index.questions.has(id)}`);
        return real.question(id);
      },
      facts: {
        ...real.facts,
        limit: (id) => {
          asked.add(`limit ${id} ${real.facts.limit(id) !== undefined}`);
          return real.facts.limit(id);
        },
      },
    });
    for (const name of names) allOutcomes(watched(house(demoText(name))));
    expect([...asked].filter((line) => line.endsWith('false'))).toEqual([]);
    expect(asked.size).toBeGreaterThan(40);
  });

  it('give every number that a flow file may name, somewhere among the demo houses', () => {
    const houses = names.map((name) => house(demoText(name)));
    const spots = (one: House) => [
      {},
      ...one.facts.sides.map((side) => ({ side })),
      ...['trees', 'outbuildings'].flatMap((group) =>
        one.facts.members(group).map((member) => ({ group, member })),
      ),
    ];
    const silent = COMPUTED_IDS.filter(
      (id) => !houses.some((one) => spots(one).some((spot) => computedNumber(one, id, spot) !== undefined)),
    );
    expect(silent).toEqual([]);
  });

  it('take a named unit only where it measures the same', () => {
    const at = house(kiln);
    const base = computedNumber(at, 'gravel.covered', { side: 'front' }) ?? Number.NaN;
    expect(computedNumber(at, 'gravel.covered.sqft', { side: 'front' })).toBeCloseTo(base / 0.09290304, 9);
    expect(computedNumber(at, 'gravel.covered.ft', { side: 'front' })).toBeUndefined();
    expect(computedNumber(at, 'gravel.nothing', { side: 'front' })).toBeUndefined();
    expect(computedNumber(at, 'no-such', {})).toBeUndefined();
    expect(computedNumber(at, 'gravel', {})).toBeUndefined();
  });

  it('run once at a spot, however often they are asked', () => {
    const at = house(kiln);
    expect(outcomeAt(at, 'zones', {})).toBe(outcomeAt(at, 'zones', { side: 'left' }));
  });
});

describe('what is not known', () => {
  it('a question off the path gives nothing, one without an answer says which it waits for', () => {
    expect(outcomeAt(house(demoText('larkspur-way-41')), 'shrub-gap', {})).toBeUndefined();
    expect(
      outcomeAt(house(changed(flume, { 'zone1.shrub-gap': 'not sure' })), 'shrub-gap', {}),
    ).toMatchObject({
      kind: 'missing',
      question: 'zone1.shrub-gap',
    });
    expect(outcomeAt(house(changed(kiln, { 'vents.area-length': 'skip' })), 'zones', {})).toMatchObject({
      kind: 'missing',
      question: 'vents.area-length',
    });
  });

  it('without the slope a gap too small for gentle ground is found, one wide enough for any is not, others wait', () => {
    const at = (gap: string) =>
      outcomeAt(house(changed(kiln, { 'about.slope': 'not sure', 'zone1.crown-gap': gap })), 'crown-gap', {});
    const small = at('8 ft');
    expect(small?.kind === 'result' && inUnit(small, 'short', 'ft')).toBeCloseTo(2, 9);
    const wide = at('30 ft');
    expect(wide?.kind === 'result' && inUnit(wide, 'short', 'ft')).toBe(0);
    expect(at('15 ft')).toMatchObject({ kind: 'missing', question: 'about.slope' });
  });

  it('shows what was taken for granted, and is known no better than memory then', () => {
    const outcome = resultAt(house(kiln), 'fence-end', { side: 'back' });
    expect(outcome.inputs.filter(({ from }) => from === 'assumed').map(({ id }) => id)).toEqual([
      'fence-height',
    ]);
    expect(outcome.status).toBe('memory');
  });
});

describe('findings that rest on a computation', () => {
  // Islands on a 45 % slope at the left of this house: 6 times the height.
  it.each([
    ['3 ft', '17 ft 11 in', true],
    ['3 ft', '18 ft', false],
    ['2.3 ft', '13.79 ft', true],
    ['2.3 ft', '13.8 ft', false],
  ])('shrubs of %s with a gap of %s are too near: %s', (height, gap, near) => {
    const text = changed(flume, { 'zone1.shrub-height': height, 'zone1.shrub-gap': gap });
    expect(found(text).includes('zone1.near-shrubs@left')).toBe(near);
  });

  it.each([
    ['29 ft', true],
    ['30 ft', false],
  ])('crowns %s apart on the same slope are too near: %s', (gap, near) => {
    expect(found(changed(flume, { 'zone1.crown-gap': gap })).includes('zone1.near-crowns@left')).toBe(near);
  });

  it.each([
    ['12 ft', '3 ft 11 in', true],
    ['12 ft', '4 ft', false],
    ['17 ft', '5 ft 7 in', true],
    ['17 ft', '5 ft 8 in', false],
    ['18 ft', '6 ft', false],
    ['60 ft', '5 ft 11 in', true],
  ])('a tree of %s with its lowest branch at %s is a ladder: %s', (height, branch, ladder) => {
    const text = flume
      .replace('trees.height: 70 ft', `trees.height: ${height}`)
      .replace('trees.lowest-branch: 20 ft', `trees.lowest-branch: ${branch}`);
    expect(found(text).includes('tree.ladder@trees/t1')).toBe(ladder);
  });

  it('off the path they are no, so that open breaks in the yard still count', () => {
    const { elements } = assess(realProgramme().checklist, sheetOf(demoText('fernhollow-lane-12')));
    expect(elements.map(({ id }) => id)).toContain('zone1.broken@front:flame');
  });
});

import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { readAnswers } from '../../src/files/read-answers.ts';
import { realProgramme } from '../support/programme.ts';

const { checklist } = realProgramme();

const steepBrush = {
  'about.slope': '30 %',
  'about.downhill': '[left]',
  'roof.covering': 'shingle',
  'eaves.kind': 'open',
  'zone1.plants': '{ left: dense }',
  'zone1.shrub-height': '5 ft',
  'zone1.grass': '3 in',
  'zone0.ground': '[hard]',
};
const pine = {
  side: 'left',
  dead: 'alive',
  kind: 'resinous',
  'to-roof': '0 ft',
  height: '45 ft',
  'lowest-branch': '15 ft',
  under: '[none]',
};

/** Answers put in place of those above; nothing for a question that is then not asked. */
type Change = Readonly<Record<string, string | undefined>>;

/** The chains that pass through the tree, by kind and side, with their weights. */
function throughTree(house: Change = {}, tree: Record<string, string> = {}) {
  const answers = Object.entries({ ...steepBrush, ...house }).filter(([, value]) => value !== undefined);
  const lines = answers.map(([id, value]) => `${id}: ${value}`);
  const own = Object.entries({ ...pine, ...tree }).map(([id, value]) => `${id}: ${value}`);
  const text = ['about.danger: no', ...lines, `trees: [{ ${own.join(', ')} }]`].join('\n');
  const read = readAnswers(checklist.index, 'house.yaml', text);
  expect([...read.problems, ...read.warnings]).toEqual([]);
  const ways = assess(checklist, read.sheet).waysIn.filter((way) => way.id.includes('tree.'));
  return new Map(ways.map((way) => [`${way.kind.id}@${way.side}`, way.weight]));
}

const kinds = (house?: Change, tree?: Record<string, string>) => [...throughTree(house, tree).keys()];

describe('brush burning up a slope under a resinous crown', () => {
  it('is a way in with nothing under the tree itself', () => {
    expect(kinds()).toEqual(['slope-to-crown-to-eave@left']);
  });

  it('lights a wood roof too', () => {
    expect(kinds({ 'roof.covering': 'wood' })).toContain('slope-to-crown-to-wood-roof@left');
  });

  // Source: University of California, space above a shrub: three times its height, so that over a shrub of 5 ft the
  // branch is 20 ft up (and over one of 3 ft 12 ft).
  it.each([
    ['5 ft', '19.9 ft', 1],
    ['5 ft', '20 ft', 0],
    ['3 ft', '11.9 ft', 1],
    ['3 ft', '12 ft', 0],
    ['2 ft', '7.9 ft', 1],
    ['2 ft', '8 ft', 0],
    ['1.5 ft', '6 ft', 0],
  ])('from shrubs of %s to a lowest branch of %s: %i', (shrub, branch, count) => {
    expect(kinds({ 'zone1.shrub-height': shrub }, { 'lowest-branch': branch })).toHaveLength(count);
  });

  const notAsked = { 'about.downhill': undefined };
  it.each<[string, Change, Record<string, string>]>([
    ['the ground is gentle', { 'about.slope': '10 %', ...notAsked }, {}],
    ['the slope is at another side', { 'about.downhill': '[right]' }, {}],
    [
      'only grass grows below',
      { 'zone1.plants': '{ all: clear }', 'zone1.grass': '3 ft', 'zone1.shrub-height': undefined },
      {},
    ],
    ['the tree has broad leaves', {}, { kind: 'broadleaf' }],
    ['the branches keep clear of the house', {}, { 'to-roof': '12 ft' }],
  ])('is none where %s', (_, house, tree) => {
    expect(kinds(house, tree)).toEqual([]);
  });

  it('is not counted a second time where a ladder leads up, and weighs less than that ladder', () => {
    const ladder = throughTree({}, { under: '[shrubs]' });
    expect([...ladder.keys()]).toEqual(['ladder-to-tree-to-eave@left']);
    const slope = throughTree().get('slope-to-crown-to-eave@left') ?? 0;
    expect(slope).toBeGreaterThan(0);
    expect(slope).toBeLessThan(ladder.get('ladder-to-tree-to-eave@left') ?? 0);
  });
});

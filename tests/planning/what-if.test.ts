import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/assess/assess.ts';
import { compareAssessments } from '../../src/planning/compare.ts';
import { assessDone } from '../../src/planning/done.ts';
import { seededRandom } from '../../src/planning/seeded-random.ts';
import { jobsNamed, whatIf } from '../../src/planning/what-if.ts';
import { takenOffBy } from '../../src/ranking/rank.ts';
import { anyHouse, checklist, demoHouses, sheetOf } from './houses.ts';

const random = seededRandom(21);
const sheets = [
  ...demoHouses.map((name) => [name, sheetOf(`houses/${name}`)] as const),
  ...[1, 2, 3].map((number) => [`made-up ${number}`, anyHouse(random)] as const),
];
const idsOf = ({ ranked }: Assessment) => ranked.map((one) => one.proposal.id);

describe('a house with some jobs done', () => {
  it.each(sheets)('has left what the ranking says the jobs leave, whichever they are: %s', (_, sheet) => {
    const before = assess(checklist, sheet);
    for (let time = 0; time < 6; time++) {
      const done = before.ranked.map((one) => one.proposal).filter(() => random() < 0.4);
      const after = assessDone(
        checklist,
        sheet,
        done.map((one) => one.id),
      );
      expect(after.exposure).toBeCloseTo(before.exposure - takenOffBy(done, before.chains), 9);
      for (const { id } of done) expect(idsOf(after)).not.toContain(id);
      const weights = after.waysIn.reduce((sum, way) => sum + way.weight, 0);
      expect(after.exposure).toBeCloseTo(weights, 12);
      for (const element of after.elements) expect(element.readiness).toBeGreaterThan(0);
    }
  });

  it.each(sheets)('counts of two jobs of which one is enough only the better: %s', (_, sheet) => {
    const before = assess(checklist, sheet);
    const groups = before.ranked.filter((one) => one.proposal.insteadOf !== undefined);
    for (const first of groups.slice(0, 12)) {
      const after = assessDone(checklist, sheet, [first.proposal.id]);
      for (const { proposal, alone } of after.ranked) {
        if (proposal.insteadOf !== first.proposal.insteadOf) continue;
        const other = before.ranked.find((one) => one.proposal.id === proposal.id);
        const both = takenOffBy([first.proposal, ...(other ? [other.proposal] : [])], before.chains);
        expect(alone).toBeCloseTo(both - first.alone, 9);
      }
    }
  });

  it('leaves nothing waiting for a job that is done', () => {
    const sheet = sheetOf('houses/fernhollow-lane-12');
    const gravel = assess(checklist, sheet).ranked.find((one) => one.proposal.id === 'lay-gravel@front');
    expect(gravel?.proposal.requires).toContain('take-out-mulch@front');
    const after = assessDone(checklist, sheet, ['take-out-mulch@front']);
    expect(after.ranked.find((one) => one.proposal.id === 'lay-gravel@front')?.proposal.requires).toEqual([
      'rake-leaves@front',
    ]);
    expect(after.done.map((one) => one.id)).toEqual(['take-out-mulch@front']);
  });

  it('passes over what is no job of the house', () => {
    const sheet = sheetOf('houses/larkspur-way-41');
    const after = assessDone(checklist, sheet, ['new-roof']);
    expect(after.done).toEqual([]);
    expect(after.exposure).toBe(assess(checklist, sheet).exposure);
  });
});

describe('comparing two states of a house', () => {
  it('names ways in that were closed, lessened and left as they were', () => {
    const sheet = sheetOf('houses/fernhollow-lane-12');
    const { before, after, comparison } = whatIf(checklist, sheet, [], {
      done: ['take-out-mulch@front', 'rake-leaves@front'],
      answers: {},
    });
    const { closed, opened, lessened, grown, unchanged } = comparison;
    expect(closed.length).toBeGreaterThan(0);
    for (const way of closed) expect(way.id).toContain('zone0.bark');
    expect(lessened.length).toBeGreaterThan(0);
    for (const { way, before: was, after: is } of lessened) {
      expect(way.id).toContain('zone0.leaves');
      expect(is).toBeCloseTo(0.15 * was, 9);
    }
    expect([...opened, ...grown]).toEqual([]);
    expect(closed.length + lessened.length + unchanged.length).toBe(before.waysIn.length);
    expect(comparison.exposure.after).toBeCloseTo(after.exposure, 12);
  });

  it('names ways in that changed answers open', () => {
    const sheet = sheetOf('houses/larkspur-way-41');
    const answers = {
      'openings.glass': { status: 'given', value: 'single' },
      'vents.high-mesh': { status: 'given', value: 'none' },
    } as const;
    const { comparison } = whatIf(checklist, sheet, [], { done: [], answers });
    expect(comparison.opened.some((way) => way.id.includes('vent.unscreened'))).toBe(true);
    expect(comparison.lines.some((line) => line.before === undefined && line.after !== undefined)).toBe(true);
    expect(sheet['openings.glass']).not.toEqual(answers['openings.glass']);
  });

  it.each(sheets)('finds nothing between a house and itself: %s', (_, sheet) => {
    const one = assess(checklist, sheet);
    const { closed, opened, lessened, grown, unchanged, lines } = compareAssessments(
      one,
      assess(checklist, sheet),
    );
    expect([closed, opened, lessened, grown].flat()).toEqual([]);
    expect(unchanged.length).toBe(one.waysIn.length);
    for (const line of lines) expect(line.after).toBe(line.before);
  });

  it('takes a job by its id or an action at all its places', () => {
    const known = ['mesh-vents@left', 'mesh-vents@right', 'new-roof'];
    expect(jobsNamed(['mesh-vents', 'new-roof'], known)).toEqual({ ids: known, unknown: [] });
    expect(jobsNamed(['mesh-vents@left', 'mesh-vent'], known)).toEqual({
      ids: ['mesh-vents@left'],
      unknown: ['mesh-vent'],
    });
  });
});

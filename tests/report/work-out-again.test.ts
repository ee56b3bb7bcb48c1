import { describe, expect, it } from 'vitest';
import { renderJson } from '../../src/report/render-json.ts';
import type { Report } from '../../src/report/report.ts';
import { houses, reportOf } from './report-of.ts';
import { workOutAgain } from './work-out-again.ts';

/** A report as somebody else reads it: from its JSON, with nothing else at hand. */
const written = (name: string) => JSON.parse(renderJson(reportOf(name).report)) as Report;

describe.each(houses)('from the JSON of %s alone', (name) => {
  const report = written(name);
  const again = workOutAgain(report);

  it('the weight of each way in is the product of the readiness of its elements', () => {
    const readiness = new Map(report.elements.map((one) => [one.id, one.readiness]));
    for (const way of report.waysIn) {
      const product = way.elements.reduce((weight, id) => weight * (readiness.get(id) ?? Number.NaN), 1);
      expect(product, way.id).toBeCloseTo(way.weight, 12);
    }
  });

  it('the exposure is the sum over the ways in, and what is left of it follows from the shares', () => {
    expect(again.now).toBeCloseTo(report.exposure.now, 10);
    expect(again.left).toBeCloseTo(report.exposure.left, 10);
  });

  it('the order of doing, the ranks and the shares come out the same', () => {
    expect(again.listed.map(({ job }) => job.id)).toEqual(report.actions.map(({ id }) => id));
    again.listed.forEach((one, position) => {
      const said = report.actions[position];
      expect(said?.rank).toBe(position + 1);
      expect(said?.turn, one.job.id).toBe(one.turn);
      expect((said?.share ?? Number.NaN) * report.exposure.now, one.job.id).toBeCloseTo(one.share, 10);
      expect((said?.alone ?? Number.NaN) * report.exposure.now, one.job.id).toBeCloseTo(one.alone, 10);
    });
    const inTurn = [...again.listed].sort((a, b) => a.turn - b.turn).map(({ job }) => job.id);
    expect(report.plan).toEqual(inTurn);
  });

  it('a job closes the ways in of which it takes an element away', () => {
    for (const action of report.actions) {
      const gone = Object.keys(action.treats).filter((id) => action.treats[id] === 0);
      const closed = report.waysIn.filter((way) => way.elements.some((id) => gone.includes(id)));
      expect([...action.closes].sort(), action.id).toEqual(closed.map((way) => way.id).sort());
    }
  });

  it('the lines of the list hold every ranked job once, with the sum of their shares', () => {
    const lines = [...report.jobs, ...report.alsoWorth];
    expect(lines.flatMap((line) => line.actions).sort()).toEqual(report.actions.map(({ id }) => id).sort());
    for (const line of lines) {
      const shares = report.actions.filter(({ id }) => line.actions.includes(id)).map(({ share }) => share);
      expect(
        shares.reduce((total, one) => total + one, 0),
        line.do,
      ).toBeCloseTo(line.share, 10);
    }
    expect(report.jobs.map(({ rank }) => rank)).toEqual(report.jobs.map((_, position) => position + 1));
  });
});

describe('the houses together', () => {
  it('have jobs to rank, jobs left out, jobs that wait for others and alternatives: nothing above holds by being empty', () => {
    const reports = houses.map(written);
    const actions = reports.flatMap((report) => report.actions);
    expect(actions.length).toBeGreaterThan(50);
    expect(reports.some((report) => report.leftOut.length > 0)).toBe(true);
    expect(actions.some((action) => action.requires.length > 0)).toBe(true);
    expect(actions.some((action) => action.insteadOf !== null)).toBe(true);
    expect(actions.some((action) => action.closes.length > 0)).toBe(true);
  });
});

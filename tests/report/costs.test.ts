import { describe, expect, it } from 'vitest';
import { weakest } from '../../src/report/report-costs.ts';
import { houses, reportOf } from './report-of.ts';

describe('what a job costs', () => {
  it.each(houses)('at %s is the sum of its price lines times their amounts', (name) => {
    const { report } = reportOf(name);
    for (const { cost, do: what } of [...report.jobs, ...report.actions]) {
      if (!cost) continue;
      const low = cost.lines.reduce((total, line) => total + line.amount * line.low, 0);
      const high = cost.lines.reduce((total, line) => total + line.amount * line.high, 0);
      expect([cost.low, cost.high], what).toEqual([low, high]);
      expect(cost.low).toBeLessThanOrEqual(cost.high);
    }
  });

  it('over several places is the sum of what it costs at each', () => {
    const { report } = reportOf('kiln-road-3');
    const joined = report.jobs.filter((job) => job.cost && job.actions.length > 1);
    expect(joined.length).toBeGreaterThan(3);
    for (const job of joined) {
      const parts = report.actions.filter(({ id }) => job.actions.includes(id));
      const sum = parts.reduce((total, one) => total + (one.cost?.high ?? 0), 0);
      expect(job.cost?.high, job.do).toBeCloseTo(sum, 6);
    }
  });

  it('uses an amount that was worked out, where it can be, and the usual one where not', () => {
    const usual = reportOf('kiln-road-3', { computed: () => undefined }).report;
    const worked = reportOf('kiln-road-3').report;
    const amount = (report: typeof usual, line: string) =>
      report.actions.flatMap((one) => one.cost?.lines.find(({ id }) => id === line)?.amount ?? [])[0];
    // The strip of 5 ft along the 34 ft front, with half of a round corner at each end.
    expect(amount(worked, 'gravel')).toBeCloseTo(34 * 5 + (Math.PI * 25) / 4, 9);
    expect(amount(usual, 'gravel')).toBe(200);
    expect(amount(worked, 'fence-metal')).toBeCloseTo(8, 9);
    expect(amount(usual, 'fence-metal')).toBe(5);
  });

  it('is known no better than the weakest of its lines', () => {
    expect(weakest(['read', 'memory', 'reported'])).toBe('memory');
    expect(weakest(['read', 'reported'])).toBe('reported');
    expect(weakest(['read'])).toBe('read');
  });
});

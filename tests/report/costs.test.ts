import { describe, expect, it } from 'vitest';
import { costsOfJobs, costTogether } from '../../src/planning/job-cost.ts';
import { renderReport } from '../../src/report/formats.ts';
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

  it('over several places is the sum of what it costs at each, with a set of tools or a visit once', () => {
    const { report } = reportOf('kiln-road-3');
    const joined = report.jobs.filter((job) => job.cost && job.actions.length > 1);
    expect(joined.length).toBeGreaterThan(3);
    for (const job of joined) {
      const lines = report.actions.flatMap((one) =>
        job.actions.includes(one.id) ? (one.cost?.lines ?? []) : [],
      );
      const once = new Map(
        lines.filter(({ unit }) => /^(set|visit)$/.test(unit)).map((line) => [line.id, line]),
      );
      const each = lines.filter(({ id }) => !once.has(id));
      const sum = [...each, ...once.values()].reduce((total, line) => total + line.high * line.amount, 0);
      expect(job.cost?.high, job.do).toBeCloseTo(sum, 6);
    }
  });

  it.each(houses)('at %s, with hired hands and the visit of a trade, is what a budget counts', (name) => {
    const { report, assessment, flow } = reportOf(name);
    for (const job of [...report.jobs, ...report.alsoWorth]) {
      const proposals = assessment.ranked
        .map(({ proposal }) => proposal)
        .filter(({ id }) => job.actions.includes(id));
      const budget = costTogether(costsOfJobs(flow, proposals, assessment.facts.computed)).money;
      const { hired, visit } = job.onTop;
      for (const end of ['low', 'high'] as const) {
        const shown = (job.cost?.[end] ?? 0) + (hired?.[end] ?? 0) + (visit?.[end] ?? 0);
        expect(shown, job.do).toBeCloseTo(budget[end], 6);
      }
    }
  });

  it('names US dollars in full, and once where they come from, only where readers have another currency', () => {
    const at = (rulebook: string) => {
      const { report, wording } = reportOf('kiln-road-3', {
        change: (sheet) => ({ ...sheet, 'about.place': { status: 'given', value: rulebook } }),
      });
      return renderReport(report, wording, 'text', { width: 1000 });
    };
    const [home, away] = [at('california'), at('australia')];
    expect(home).toMatch(/\(by hand; [^)]*\$\d/);
    expect(home).not.toMatch(/US\$\d|prices? .*United States/i);
    expect(away).toMatch(/\(by hand; [^)]*US\$\d/);
    expect(away).not.toMatch(/[^S]\$\d/);
    expect(away.match(/estimates from the United States/g)).toHaveLength(1);
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

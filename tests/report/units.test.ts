import { describe, expect, it } from 'vitest';
import { houses, reportOf } from './report-of.ts';

describe.each(houses)('a report of %s for a reader of metric', (name) => {
  const { report } = reportOf(name, { units: 'metric' });

  it('has titles in metres', () => {
    const titles = report.stops.map((stop) => stop.title).join('; ');
    expect(titles).toContain('0 to 1.5 m');
    expect(titles).not.toMatch(/\b(?:ft|feet|in)\b/);
  });

  it('says jobs in lengths that people use, and gives a rounded rule its own number too', () => {
    const jobs = [...report.jobs, ...report.alsoWorth];
    for (const job of jobs) expect(job.do).not.toMatch(/\d (?:ft|in)\b|\d{3} mm|\d\.\d\d m\b/);
    // 5 ft is 1.524 m, 30 ft 9.144 m, 1/8 in 3.175 mm (international foot, 1959).
    const rules = new Map(jobs.flatMap((job) => job.rules.map((rule) => [rule.id, rule] as const)));
    for (const [id, value, own] of [
      ['zone0', '1.5 m', '5 ft'],
      ['zone1', '9 m', '30 ft'],
      ['meshMax', '3 mm', '1/8 in'],
    ] as const) {
      const rule = rules.get(id);
      if (rule) expect([rule.value, rule.own]).toEqual([value, own]);
    }
    for (const rule of rules.values()) expect(rule.own === null || !rule.own.endsWith('m')).toBe(true);
  });
});

describe('a report under the rules of a place that uses metric', () => {
  it('keeps the numbers of that place as they are', () => {
    const { report } = reportOf('fernhollow-lane-12', {
      units: 'metric',
      change: (sheet) => ({ ...sheet, 'about.place': { status: 'given', value: 'new-zealand' } }),
    });
    // Guidance of Fire and Emergency New Zealand (read): mesh of 3 mm.
    const mesh = report.jobs.flatMap((job) => job.rules).find(({ id }) => id === 'meshMax');
    expect([mesh?.value, mesh?.own]).toEqual(['3 mm', null]);
  });
});

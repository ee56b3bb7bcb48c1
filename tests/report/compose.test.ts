import { describe, expect, it } from 'vitest';
import type { AnswerSheet } from '../../src/answers/answer.ts';
import { renderReport } from '../../src/report/formats.ts';
import { houses, reportOf } from './report-of.ts';

type Wanted = Parameters<typeof reportOf>[1];

function text(name: string, wanted?: Wanted, width = 100): string {
  const { report, wording } = reportOf(name, wanted);
  return renderReport(report, wording, 'text', { width });
}

const flat = (lines: string) => lines.replace(/\s+/g, ' ');

/** Only the answers of the first stops, as when a walk stops halfway. */
const halfway = (sheet: AnswerSheet): AnswerSheet =>
  Object.fromEntries(Object.entries(sheet).filter(([key]) => /^(about|roof|eaves)\./.test(key)));

describe('the order of a report', () => {
  it('starts with leaving, then the biggest change, the first hour, the list, and ends with the last word', () => {
    const report = text('kiln-road-3');
    const order = [
      'If you are told to leave',
      'The biggest single change',
      'The best first hour',
      'The list in short',
      'The list, job by job',
      'Also worth doing',
      'To find out\n---',
      'Through the year',
      'The day itself',
      'Cautions\n',
      'What was found',
      'Your answers',
      'Whose rules these are',
      'Sources\n',
      'The last word',
      'Local code and your fire authority decide.',
      'Nothing here is a promise.',
    ].map((part) => [part, report.indexOf(part)] as const);
    expect(order.filter(([, at]) => at < 0)).toEqual([]);
    expect(order.map(([part]) => part)).toEqual([...order].sort((a, b) => a[1] - b[1]).map(([part]) => part));
  });

  it('gives each caution in full once, and every job its cautions in short', () => {
    const { report, wording } = reportOf('kiln-road-3');
    const lines = flat(renderReport(report, wording, 'text'));
    for (const caution of report.cautions)
      expect(lines.split(flat(caution.text)).length - 1, caution.id).toBe(1);
    for (const job of report.jobs) {
      const own = report.cautions.filter(({ id }) => job.cautions.includes(id));
      expect(own.length).toBe(job.cautions.length);
    }
  });

  it('says for every trade job that has a contractor what to ask, and which permit', () => {
    const { report, wording } = reportOf('kiln-road-3');
    const trades = report.jobs.filter((job) => job.lane === 'trade');
    expect(trades.length).toBeGreaterThan(2);
    const lines = flat(renderReport(report, wording, 'text'));
    for (const { contractor, do: what } of trades) {
      expect(contractor, what).not.toBeNull();
      for (const ask of contractor?.ask ?? []) expect(lines).toContain(flat(ask));
      expect(lines).toContain(flat(contractor?.permit ?? ''));
    }
    expect(report.jobs.filter((job) => job.lane !== 'trade' && job.contractor)).toEqual([]);
  });
});

describe('a house in good order', () => {
  it('hears that nothing costly is needed', () => {
    const { report } = reportOf('larkspur-way-41');
    expect(report.inOrder).toBe(true);
    expect(flat(text('larkspur-way-41'))).toContain('in good order, and nothing costly is needed');
  });

  it.each(houses.filter((name) => name !== 'larkspur-way-41'))('is not what %s hears', (name) => {
    expect(flat(text(name))).not.toContain('nothing costly');
  });

  it('is not what an unfinished or an unknown walk hears, although it has found nothing', () => {
    const nothing = reportOf('larkspur-way-41', { change: halfway }).report;
    expect(nothing.jobs).toEqual([]);
    expect(nothing.inOrder).toBe(false);
    const unsure = reportOf('larkspur-way-41', {
      change: (sheet) => ({ ...sheet, 'zone0.ground': { status: 'notSure' } }),
    }).report;
    expect(unsure.inOrder).toBe(false);
  });
});

describe('a walk stopped halfway', () => {
  const { report } = reportOf('kiln-road-3', { change: halfway });
  const lines = flat(text('kiln-road-3', { change: halfway }));

  it('says so, and how much is open', () => {
    expect(report.walk.open).toBeGreaterThan(20);
    expect(lines).toContain('This walk is not finished.');
    expect(lines).toContain(`${report.walk.open} of ${report.walk.asked} questions have no answer yet`);
    expect(lines).toContain('Not asked yet');
  });

  it('still gives the jobs that follow from what is known', () => {
    expect(report.jobs.some((job) => job.actions.some((id) => id === 'new-roof'))).toBe(true);
  });
});

describe('the seasons of the upkeep', () => {
  const headings = (report: string) => [...report.matchAll(/^(Spring|Summer|Autumn|Winter) \((\w+)/gm)];

  it.each([
    ['2026-06-12', 'Summer', 'June'],
    ['2026-12-01', 'Winter', 'December'],
    ['2026-01-15', 'Winter', 'December'],
    ['2026-09-30', 'Autumn', 'September'],
  ])('begin on %s with %s', (date, season, month) => {
    const [first] = headings(text('fernhollow-lane-12', { date }));
    expect([first?.[1], first?.[2]]).toEqual([season, month]);
  });

  it('are turned round in the south', () => {
    const change = (sheet: AnswerSheet): AnswerSheet => ({
      ...sheet,
      'about.place': { status: 'given', value: 'new-zealand' },
    });
    const [first] = headings(text('fernhollow-lane-12', { date: '2026-06-12', change }));
    expect([first?.[1], first?.[2]]).toEqual(['Winter', 'June']);
  });
});

describe('units and places', () => {
  it('prints limits and lengths in the units of the reader', () => {
    const metric = text('fernhollow-lane-12', { units: 'metric' });
    expect(metric).toMatch(/\d (?:m|cm|mm)\b/);
    expect(reportOf('fernhollow-lane-12', { units: 'metric' }).report.jobs[0]?.rules[0]?.value).toMatch(
      / m$/,
    );
    expect(reportOf('fernhollow-lane-12').report.jobs[0]?.rules[0]?.value).toMatch(/ ft$/);
  });

  it('says the places of a joined job as people do', () => {
    const { report } = reportOf('kiln-road-3');
    const where = new Set([...report.jobs, ...report.alsoWorth].map((job) => job.where));
    expect(where).toContain('all sides');
    expect(where).toContain('the whole house');
    expect(where).toContain('front and right');
    expect([...where].some((one) => /^tree 1 \(front\)/.test(one))).toBe(true);
  });
});

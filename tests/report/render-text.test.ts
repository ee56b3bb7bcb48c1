import { describe, expect, it } from 'vitest';
import { renderReport } from '../../src/report/formats.ts';
import { cellsOf } from '../../src/report/wrap.ts';
import { hostile, withTyped } from './hostile.ts';
import { houses, reportOf } from './report-of.ts';

describe('the report as plain text', () => {
  it.each(houses.flatMap((name) => [40, 80].map((width) => [name, width] as const)))(
    '%s has no line longer than %i cells, and uses the room',
    (name, width) => {
      const { report, wording } = reportOf(name, { change: withTyped(hostile.join(' ')), notes: hostile });
      const lines = renderReport(report, wording, 'text', { width }).split('\n');
      const longest = Math.max(...lines.map(cellsOf));
      expect(longest).toBeLessThanOrEqual(width);
      expect(longest).toBeGreaterThan(width - 3);
      expect(lines.filter((line) => /\s$/.test(line))).toEqual([]);
    },
  );

  it.each([
    [10, 40],
    [500, 100],
  ])('asked for %i cells it takes %i', (asked, taken) => {
    const { report, wording } = reportOf('fernhollow-lane-12');
    const text = (width: number) => renderReport(report, wording, 'text', { width });
    expect(text(asked)).toBe(text(taken));
  });

  it('carries no mark of Markdown, no escape code and no unfilled place', () => {
    for (const name of houses) {
      for (const audience of ['resident', 'volunteer', 'trainee'] as const) {
        const { report, wording } = reportOf(name, { audience });
        const text = renderReport(report, wording, 'text');
        expect(text).not.toMatch(/\*\*|\{|\}|undefined|NaN|\[object/);
        expect(text).not.toContain('\u001b');
        expect(text).not.toMatch(/ {2,}\S+ {2,}|\.\.(?!\.)|\s[,.;]/);
      }
    }
  });
});

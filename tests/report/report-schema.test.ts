import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { renderJson } from '../../src/report/render-json.ts';
import { Report, reportJsonSchema } from '../../src/report/report.ts';
import { houses, reportOf } from './report-of.ts';

const schema = reportJsonSchema() as Record<string, unknown>;

describe('the JSON of a report', () => {
  it.each(houses)('of %s fits its own schema', (name) => {
    const written = JSON.parse(renderJson(reportOf(name).report));
    expect(Report.safeParse(written).error).toBeUndefined();
    // The published schema read back on its own, as somebody else would read it.
    const published = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
    expect(published.safeParse(written).error).toBeUndefined();
  });

  it('does not fit with a part missing, misspelt or of another kind', () => {
    const written = JSON.parse(renderJson(reportOf('fernhollow-lane-12').report));
    const published = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
    for (const wrong of [
      { ...written, exposure: undefined },
      { ...written, extra: 1 },
      { ...written, jobs: 'none' },
      { ...written, version: 2 },
      { ...written, actions: written.actions.map((one: object) => ({ ...one, lane: 'magic' })) },
    ]) {
      const again = JSON.parse(JSON.stringify(wrong));
      expect(published.safeParse(again).success).toBe(false);
      expect(Report.safeParse(again).success).toBe(false);
    }
  });

  it('has a schema that names its draft and forbids unknown keys', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.additionalProperties).toBe(false);
    expect(Object.keys(schema.properties as object)).toEqual(Object.keys(Report.shape));
  });

  it('refers only to elements, ways in, findings, cautions and sources that it holds', () => {
    for (const name of houses) {
      const { report } = reportOf(name);
      const ids = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id));
      const [elements, ways, findings] = [ids(report.elements), ids(report.waysIn), ids(report.findings)];
      const [cautions, sources, actions] = [
        ids(report.cautions),
        ids(report.sources),
        ids([...report.actions, ...report.leftOut]),
      ];
      expect(elements.size).toBe(report.elements.length);
      expect(ways.size).toBe(report.waysIn.length);
      for (const way of report.waysIn) expect(way.elements.every((id) => elements.has(id))).toBe(true);
      for (const action of report.actions) {
        expect(
          Object.keys(action.treats).every((id) => elements.has(id)),
          action.id,
        ).toBe(true);
        expect(
          action.closes.every((id) => ways.has(id)),
          action.id,
        ).toBe(true);
        expect(
          action.findings.every((id) => findings.has(id)),
          action.id,
        ).toBe(true);
        expect(
          action.cautions.every((id) => cautions.has(id)),
          action.id,
        ).toBe(true);
        expect(
          action.requires.every((id) => actions.has(id)),
          action.id,
        ).toBe(true);
        expect(
          action.sources.every((id) => sources.has(id)),
          action.id,
        ).toBe(true);
      }
      const referred = [
        ...report.findings.flatMap((one) => one.sources),
        ...report.elements.flatMap((one) => one.sources),
        ...report.waysIn.flatMap((one) => one.sources),
        ...report.cautions.flatMap((one) => one.sources),
        ...report.jobs.flatMap((one) => one.rules.map((rule) => rule.source)),
        ...report.jobs.flatMap((one) => one.cost?.lines.map((line) => line.source) ?? []),
      ];
      expect(referred.filter((id) => !sources.has(id))).toEqual([]);
    }
  });
});

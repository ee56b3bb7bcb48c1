import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { HOUSE_IDS } from '../../src/computations/house/computed-ids.ts';
import { allOutcomes } from '../../src/computations/house/outcome.ts';
import { NOTES } from '../../src/computations/work-out/index.ts';
import { renderReport } from '../../src/report/formats.ts';
import type { Report } from '../../src/report/report.ts';
import { realProgramme } from '../support/programme.ts';
import { readHouse } from './read-house.ts';
import { houses, reportOf } from './report-of.ts';

const { flow } = realProgramme().checklist;
const of = (report: Report, id: string) => report.computations.find((one) => one.id === id);
const value = (report: Report, id: string, name: string) =>
  of(report, id)?.values.find((one) => one.id === name)?.value;

describe('the sentences for what was worked out', () => {
  it('are there for every computation, note, and name of a value or input', () => {
    for (const id of HOUSE_IDS)
      for (const part of ['title', 'job']) expect(flow.phrases[`computed.${id}.${part}`], id).toBeDefined();
    for (const note of Object.keys(NOTES)) expect(flow.phrases[`computed.note.${note}`], note).toBeDefined();
    for (const name of houses) {
      const { checklist } = realProgramme();
      const { house } = assess(checklist, readHouse(checklist.index, name));
      for (const outcome of allOutcomes(house)) {
        const named = outcome.inputs.filter(({ from }) => from === 'assumed' || from === 'usual');
        const told = outcome.kind === 'result' ? [...outcome.values, ...outcome.assumptions] : [];
        for (const { id } of [...named, ...told])
          expect(flow.phrases[`computed.word.${id}`], id).toBeDefined();
      }
    }
  });
});

describe.each(houses)('the report of %s', (name) => {
  const { report } = reportOf(name);

  it('carries computed numbers, each with inputs, sources and how well it is known', () => {
    const results = report.computations.filter(({ outcome }) => outcome === 'result');
    expect(results.length).toBeGreaterThan(1);
    const sources = new Set(report.sources.map(({ id }) => id));
    for (const one of results) {
      expect(one.values.length, one.id).toBeGreaterThan(0);
      expect(one.inputs.length, one.id).toBeGreaterThan(0);
      expect(one.sources.length, one.id).toBeGreaterThan(0);
      expect(one.sources.filter((id) => !sources.has(id))).toEqual([]);
      expect(one.status, one.id).not.toBeNull();
      for (const { value } of one.values) expect(Number.isFinite(value), one.id).toBe(true);
    }
  });

  it('gives no number where a formula does not cover the answers or an answer is missing', () => {
    for (const one of report.computations.filter(({ outcome }) => outcome !== 'result')) {
      expect([one.values, one.status], one.id).toEqual([[], null]);
      if (one.outcome === 'outside') expect(one.text).toContain('outside what the formula covers');
    }
  });

  it('tells them in every format, and the same numbers in feet and in metres', () => {
    const { wording } = reportOf(name);
    const text = renderReport(report, wording, 'text', { width: 80 });
    expect(text).toContain('What was worked out');
    const metric = reportOf(name, { units: 'metric' }).report;
    expect(
      metric.computations.map(({ id, values, shopping }) => ({
        id,
        values: values.map((one) => one.value),
        packs: shopping.map((one) => one.packs),
      })),
    ).toEqual(
      report.computations.map(({ id, values, shopping }) => ({
        id,
        values: values.map((one) => one.value),
        packs: shopping.map((one) => one.packs),
      })),
    );
    const says = JSON.stringify(metric.computations.map((one) => one.values.map(({ said }) => said)));
    expect(says).not.toMatch(/ (?:ft|in|sq ft|sq in|cu ft|cu yd)\b/);
  });

  it('never calls a distance safe', () => {
    const told = JSON.stringify([report.computations, report.jobs.map((job) => job.workedOut)]);
    expect(told.replaceAll(/never a safe distance/g, '')).not.toMatch(/\bsafe\b/);
  });

  it('lists what to buy only where a job of the list needs it', () => {
    const lanes = new Set(report.actions.map(({ id }) => id));
    for (const { computation, sides } of report.computations.filter(({ group }) => group === 'supplies')) {
      const actions = flow.actions.filter((one) => one.workedOut.includes(computation)).map(({ id }) => id);
      const wanted = actions.some((id) =>
        [...lanes].some((lane) => {
          const [action, place] = lane.split('@');
          return action === id && (sides.length === 0 || sides.some((side) => side === place));
        }),
      );
      expect(wanted, computation).toBe(true);
    }
  });
});

describe('the numbers of the demo houses', () => {
  it('are those of the tables', () => {
    // Roofing handbooks and a field guide (read): 1,500 sq ft at 1/150 is 10 sq ft, 12.5 behind 1/8 in.
    const fernhollow = reportOf('fernhollow-lane-12').report;
    expect(value(fernhollow, 'vents-attic', 'grossThen')).toBeCloseTo(12.5 * 0.09290304, 9);
    // University of California table (read): 6 times 6 ft on a slope above 40 %, 30 ft between crowns.
    const flume = reportOf('old-flume-road-27').report;
    expect(value(flume, 'shrub-gap', 'gap')).toBeCloseTo(36 * 0.3048, 9);
    expect(value(flume, 'crown-gap', 'gap')).toBeCloseTo(30 * 0.3048, 9);
    // The same source: 6 ft on a tall tree; 15 ft clear over a 5 ft shrub.
    const kiln = reportOf('kiln-road-3').report;
    expect(value(kiln, 'limb-up@trees/t1', 'branchHeight')).toBeCloseTo(6 * 0.3048, 9);
    expect(value(kiln, 'shrub-under-tree@trees/t1', 'clear')).toBeCloseTo(15 * 0.3048, 9);
  });

  it('are told to the job that they bear on', () => {
    const { report } = reportOf('fernhollow-lane-12');
    const mesh = report.jobs.find((job) => job.actions.some((id) => id.startsWith('mesh-vents')));
    expect(mesh?.workedOut.join(' ')).toContain('openings 1.25 times as large');
    expect(mesh?.workedOut.join(' ')).toContain('12.5 sq ft in all');
    const gravel = reportOf('kiln-road-3').report.jobs.find((job) =>
      job.actions.some((id) => id.startsWith('lay-gravel')),
    );
    expect(gravel?.workedOut).toHaveLength(2);
    expect(gravel?.workedOut[0]).toMatch(/^Front and back: /);
  });

  it('without the size of the house the job still says the factor', () => {
    const { report } = reportOf('fernhollow-lane-12', {
      change: (sheet) => ({ ...sheet, 'vents.area-length': { status: 'skipped' } }),
    });
    const mesh = report.jobs.find((job) => job.actions.some((id) => id.startsWith('mesh-vents')));
    expect(mesh?.workedOut.join(' ')).toContain('1.25 times');
    expect(mesh?.workedOut.join(' ')).not.toContain('sq ft');
    expect(of(report, 'zones')).toMatchObject({ outcome: 'missing', text: 'Length of the house' });
  });
});

describe('the heat of what burns near the house', () => {
  it('is said as times full sun and as what it does, and kept to all digits in the data', () => {
    const { report } = reportOf('fernhollow-lane-12');
    const shrub = report.jobs.find((job) => job.actions.some((id) => id.startsWith('take-out-shrubs')));
    const told = shrub?.workedOut.join(' ') ?? '';
    const flux = value(report, 'heat-shrub-wood@front', 'flux') ?? 0;
    // Full sun on a face turned to it is 1 kW/m2 (reference irradiance of IEC 60904-3, from memory).
    expect(told).toContain(`about ${Number((flux / 1000).toPrecision(2))} times as much as full sun`);
    // Wood lit by sparks or flame in a short exposure: 12.6 kW/m2 (BR 187, read).
    expect(flux).toBeGreaterThan(12_600);
    expect(told).toContain('That lights wood in a short time.');
    expect(told).not.toMatch(/kW/);
    expect(Number(flux.toPrecision(2))).not.toBe(flux);
  });

  it('is told in two digits wherever it was worked out', () => {
    for (const name of houses) {
      const heats = reportOf(name).report.computations.flatMap((one) =>
        one.values.filter(({ dimension }) => dimension === 'heatFlux'),
      );
      for (const { said } of heats) expect(said).toMatch(/^(?:\d{1,2}0*|\d\.\d|0\.\d{1,2}) kW\/sq m$/);
    }
  });
});

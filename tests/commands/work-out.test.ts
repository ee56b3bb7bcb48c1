import { describe, expect, it } from 'vitest';
import { EXAMPLES, exampleLine } from '../../src/commands/work-out/examples.ts';
import { COMPUTATIONS } from '../../src/computations/work-out/index.ts';
import { fromBase } from '../../src/quantities/index.ts';
import { runCommand } from '../support/run-command.ts';

const ids = COMPUTATIONS.map(({ id }) => id);
const workOut = (...words: readonly string[]) => runCommand(['work-out', ...words]);

type Data = {
  readonly kind: string;
  readonly values: readonly { id: string; value: number; unit: string }[];
};

/** One value of the JSON output, in its base unit. */
async function value(id: string, ...words: readonly string[]): Promise<number> {
  const run = await workOut(...words, '--json');
  const data = JSON.parse(run.out) as Data;
  return data.values.find((one) => one.id === id)?.value ?? Number.NaN;
}

describe('roofdown work-out', () => {
  it('lists every computation, each with an example that works', async () => {
    const { out, code } = await workOut();
    expect(code).toBe(0);
    for (const id of ids) expect(out).toContain(`  ${id} `);
    expect(Object.keys(EXAMPLES).sort()).toEqual([...ids].sort());
    expect((await workOut('--help')).out).toBe(out);
  });

  it.each(ids)(
    '%s: help names inputs, units, allowed range, source and example; the example gives a result',
    async (id) => {
      const help = await workOut(id, '--help');
      expect(help.code).toBe(0);
      const computation = COMPUTATIONS.find((one) => one.id === id);
      for (const input of computation?.inputs ?? []) expect(help.out).toContain(`--${input.id}\n`);
      expect(help.out.match(/Allowed: .+/g)?.length).toBe(computation?.inputs.length);
      expect(help.out).toMatch(/Sources\n {2}.+ \((read|reported|practice|memory)\)/);
      expect(help.out).toContain(exampleLine(id));
      const [plain, json, metric] = await Promise.all([
        workOut(id, ...(EXAMPLES[id] ?? [])),
        workOut(id, ...(EXAMPLES[id] ?? []), '--json'),
        workOut(id, ...(EXAMPLES[id] ?? []), '--json', '--units', 'metric'),
      ]);
      expect([plain.code, plain.err, json.code, metric.code]).toEqual([0, '', 0, 0]);
      expect(plain.out).toContain('Sources\n');
      const [data, other] = [JSON.parse(json.out) as Data, JSON.parse(metric.out) as Data];
      expect(data.kind).toBe('result');
      // What is typed with its unit is the same in both systems; outlines too.
      expect(other.values.map((one) => one.value)).toEqual(data.values.map((one) => one.value));
    },
  );

  it('gives the values that are printed elsewhere', async () => {
    // Coverage table of landscape suppliers: 500 sq ft at 3 in is 4.63 cubic yards (read).
    const yards = await value('volume', 'gravel', '--area', '500 sq ft', '--depth', '3 in');
    expect(fromBase(yards, 'cuyd')).toBeCloseTo(4.63, 2);
    // Roofing handbooks, IRC R806.2: 1,500 sq ft at 1/150 needs 10 sq ft; field guide: 12.5 behind 1/8 in mesh, 20 behind No. 16 (read).
    const attic = ['vent-remesh', '--ventedArea', '1,500 sq ft', '--coverThen'];
    expect(fromBase(await value('netFreeArea', ...attic, 'mesh-eighth'), 'sqft')).toBeCloseTo(10, 9);
    expect(fromBase(await value('grossThen', ...attic, 'mesh-eighth'), 'sqft')).toBeCloseTo(12.5, 9);
    expect(fromBase(await value('grossThen', ...attic, 'mesh-sixteenth'), 'sqft')).toBeCloseTo(20, 9);
    // NUREG-1805 eq. 5-1: 750 kW, fraction 0.3, 2.5 m gives 2.8648 kW/m2 (read).
    const flux = await value('flux', 'heat-point-source', '--heatRelease=750kW', '--distance=2.5 m');
    expect(flux / 1000).toBeCloseTo(2.8648, 4);
    // University of California spacing table: 4 ft brush on a 10 % slope, 8 ft; crowns on 30 %, 20 ft (read).
    expect(
      fromBase(await value('gap', 'shrub-gap', '--slope', '10%', '--shrubHeight', '4 ft'), 'ft'),
    ).toBeCloseTo(8, 9);
    expect(fromBase(await value('gap', 'crown-gap', '--slope', '30%'), 'ft')).toBeCloseTo(20, 9);
  });

  it('takes bare numbers in the units asked for', async () => {
    expect(await value('branchHeight', 'limb-up', '--treeHeight', '40')).toBeCloseTo(1.8288, 9);
    expect(
      await value('volume', 'gravel', '--area', '10', '--depth', '100', '--units', 'metric'),
    ).toBeCloseTo(1, 9);
  });

  it.each([
    ['a number below zero', ['gravel', '--area', '-5'], /--area: .*below zero.*Allowed: .*acres/],
    ['a unit of another dimension', ['gravel', '--area', '5 kg'], /--area: .*kg.*Allowed: /],
    ['no number at all', ['limb-up', '--treeHeight', 'tall'], /--treeHeight: .*Allowed: /],
    ['an absurd number', ['limb-up', '--treeHeight', '90000 ft'], /--treeHeight: .*Allowed: /],
    ['a missing input', ['shrub-gap', '--slope', '10%'], /--shrubHeight: is missing\. Allowed: /],
    ['a wrong choice', ['heat-from-thing', '--thing', 'boat'], /--thing: .*Allowed: shrub, firewood/],
    ['an input it does not have', ['gravel', '--aera', '5'], /--aera: .*Did you mean "area"\?/],
    ['an unknown computation', ['gravl'], /no computation "gravl"\. Did you mean "gravel"\?/],
    ['an input given twice', ['limb-up', '--treeHeight', '5 m', '--treeHeight', '6 m'], /given twice/],
    ['a name without a value', ['limb-up', '--treeHeight'], /needs a value/],
    ['a stray word', ['limb-up', '40', 'ft'], /not expected/],
    ['an unknown unit system', ['limb-up', '--treeHeight', '5 m', '--units', 'royal'], /--units royal/],
  ])('refuses %s by name, with exit 2 and nothing on the output', async (_, words, message) => {
    const { code, out, err } = await workOut(...words);
    expect(err.trim()).toMatch(message);
    expect([code, out]).toEqual([2, '']);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('says what a formula does not cover, and never a number for it', async () => {
    const run = await workOut('spread-uphill', '--slope', '60 %');
    expect([run.code, run.out]).toEqual([2, '']);
    expect(run.err).toContain('outside what this formula covers');
    const json = await workOut('spread-uphill', '--slope', '60 %', '--json');
    expect(json.code).toBe(2);
    expect(JSON.parse(json.out)).toEqual({
      kind: 'outside',
      field: 'slope',
      allowed: '0 % (0 degrees) to 57 % (30 degrees)',
      message: 'outside what this formula covers',
    });
    const dryer = await workOut(
      'vent-passes',
      '--gross',
      '50 sq in',
      '--cover',
      'mesh-eighth',
      '--purpose',
      'dryer',
    );
    expect(dryer.err).toContain('a dryer outlet or flue is never screened with mesh');
  });

  it('gives a refusal as data with --json', async () => {
    const { out, code } = await workOut('gravel', '--area', 'much', '--json');
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ kind: 'badInput', field: 'area' });
  });
});

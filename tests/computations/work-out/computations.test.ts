import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../../src/quantities/index.ts';
import { result, value, workOut } from './work-out-texts.ts';

describe('published examples through the registry', () => {
  type Row = [
    id: string,
    texts: Record<string, string>,
    value: string,
    unit: UnitId,
    expected: number,
    digits: number,
    source: string,
  ];
  it.each<Row>([
    [
      'vent-required',
      { ventedArea: '1200 sq ft', retarder: 'yes', balanced: 'yes' },
      'netFreeArea',
      'sqin',
      576,
      6,
      'IRC R806.2',
    ],
    [
      'vent-required',
      { ventedArea: '1500', rule: 'attic-before-2015', retarder: 'yes' },
      'eachHalf',
      'sqin',
      360,
      6,
      'IRC R806.2',
    ],
    ['vent-required', { ventedArea: '1,500 sq ft' }, 'netFreeArea', 'sqft', 10, 9, 'IRC R806.2'],
    [
      'vent-passes',
      { gross: '12.5 sq ft', cover: 'mesh-eighth' },
      'netFreeArea',
      'sqft',
      10,
      9,
      'field guide table',
    ],
    [
      'weave-open-area',
      { meshPerInch: '8', wire: '0.017 in' },
      'openFraction',
      'fraction',
      0.7465,
      4,
      'ASTM E2016',
    ],
    [
      'heat-point-source',
      { heatRelease: '750 kW', distance: '2.5 m' },
      'flux',
      'kW/m2',
      2.8648,
      4,
      'NUREG-1805 5-1',
    ],
    [
      'heat-from-face',
      { width: '6 m', height: '3 m', distance: '7.5 m' },
      'flux',
      'kW/m2',
      7.56,
      1,
      'BR 187',
    ],
    [
      'heat-from-face',
      { width: '10 m', height: '10 m', distance: '10 m' },
      'viewFactor',
      'fraction',
      0.2394564705,
      10,
      'BR 187 A3',
    ],
    [
      'heat-from-face',
      { width: '20 m', height: '10 m', distance: '10 m', stands: 'level' },
      'viewFactor',
      'fraction',
      2 * 0.055734197,
      9,
      'BR 187 A4',
    ],
    ['heat-emitted', { temperature: '830 C' }, 'emitted', 'kW/m2', 84, 0, 'BR 187'],
    ['slope', { rise: '20 ft', run: '100 ft' }, 'degrees', 'degree', 11.31, 2, 'arithmetic'],
    ['slope', { rise: '4 ft', run: '10 ft' }, 'degrees', 'degree', 21.8, 2, 'arithmetic'],
    ['shrub-gap', { slope: '10 %', shrubHeight: '4 ft' }, 'gap', 'ft', 8, 9, 'UC ANR'],
    ['crown-gap', { slope: '30 %' }, 'gap', 'ft', 20, 9, 'UC ANR'],
    ['clearance-over-shrub', { shrubHeight: '5 ft' }, 'branchAboveGround', 'ft', 20, 9, 'UC'],
    ['limb-up', { treeHeight: '9 ft' }, 'branchHeight', 'ft', 3, 9, 'UC'],
    ['zone-areas', { outline: '15 x 10 m' }, 'near', 'sqm', 83.4966, 4, 'Steiner'],
    ['zone-areas', { outline: '12 x 10 m less 6 x 5 m at back right' }, 'near', 'sqm', 73.8542, 4, 'by hand'],
    ['gravel', { area: '500 sq ft', depth: '3 in' }, 'volume', 'cuyd', 4.63, 2, 'gravel tables'],
    ['sealant', { length: '100 ft' }, 'bead', 'ft', 24.3, 1, 'arithmetic'],
  ])('%s %o: %s in %s is %f (%i digits, %s)', (id, texts, name, unit, expected, digits) => {
    expect(value(result(id, texts), name, unit)).toBeCloseTo(expected, digits);
  });
});

describe('vent-required', () => {
  it.each<[Record<string, string>, number]>([
    [{ retarder: 'yes' }, 150],
    [{ retarder: 'yes', balanced: 'yes' }, 300],
    [{ rule: 'attic-before-2015', balanced: 'yes' }, 300],
    [{ rule: 'under-floor', retarder: 'yes' }, 1500],
    [{ rule: 'under-floor' }, 150],
    // Washington asks 1/300 under a floor (read): the place's own number wins.
    [{ rule: 'under-floor', retarder: 'yes', reduced: '300' }, 300],
  ])('uses with %o a ratio of %i', (texts, ratio) => {
    expect(value(result('vent-required', { ventedArea: '1000 sq ft', ...texts }), 'ratio', 'each')).toBe(
      ratio,
    );
  });
});

describe('vent-shortfall', () => {
  const attic = { ventedArea: '1200 sq ft', count: '12', grossEach: '14 x 8 in' };

  it('says how much is missing when quarter-inch mesh becomes sixteenth-inch', () => {
    const found = result('vent-shortfall', { ...attic, coverThen: 'mesh-sixteenth' });
    expect(value(found, 'needed', 'sqin')).toBeCloseTo(1152, 6);
    expect(value(found, 'now', 'sqin')).toBeCloseTo(12 * 112, 6);
    expect(value(found, 'then', 'sqin')).toBeCloseTo(12 * 56, 6);
    expect(value(found, 'missing', 'sqin')).toBeCloseTo(480, 6);
    expect(value(found, 'grossMissing', 'sqin')).toBeCloseTo(960, 6);
    expect(value(found, 'ventsToAdd', 'each')).toBe(9);
    expect(found.notes).toContain('remesh-add-or-listed');
  });

  it('lets a printed net free area win over the table', () => {
    const found = result('vent-shortfall', {
      ...attic,
      coverThen: 'mesh-sixteenth',
      printedThen: '96 sq in',
    });
    expect(value(found, 'missing', 'sqin')).toBeCloseTo(0, 9);
    expect(value(found, 'ventsToAdd', 'each')).toBe(0);
  });

  it.each(['dryer', 'flue'])('never puts mesh on a %s', (purpose) => {
    expect(workOut('vent-shortfall', { ...attic, purpose })).toMatchObject({
      kind: 'outside',
      field: 'purpose',
    });
    expect(workOut('vent-passes', { gross: '16 sq in', cover: 'mesh-eighth', purpose })).toMatchObject({
      kind: 'outside',
    });
  });
});

describe('metric and imperial inputs', () => {
  type Pair = [id: string, imperial: Record<string, string>, metric: Record<string, string>];
  it.each<Pair>([
    ['vent-required', { ventedArea: '1200 sq ft' }, { ventedArea: '111.483648 sq m' }],
    [
      'vent-shortfall',
      { ventedArea: '1200 sq ft', count: '12', grossEach: '112 sq in', coverThen: 'mesh-sixteenth' },
      { ventedArea: '111.483648', count: '12', grossEach: '722.579200', coverThen: 'mesh-sixteenth' },
    ],
    ['weave-open-area', { meshPerInch: '8', wire: '0.017 in' }, { meshPerInch: '8', wire: '0.4318 mm' }],
    ['heat-emitted', { temperature: '1526 F' }, { temperature: '830 C' }],
    [
      'heat-from-thing',
      { thing: 'shed', height: '8 ft', width: '10 ft', distance: '6 ft', receiver: 'eave' },
      { thing: 'shed', height: '2.4384', width: '3.048', distance: '182.88 cm', receiver: 'eave' },
    ],
    ['slope', { rise: '4 ft', run: '10 ft' }, { rise: '1.2192 m', run: '3.048 m' }],
    ['crown-gap', { slope: '20 %' }, { slope: '11.30993247402 degrees' }],
    ['limb-up', { treeHeight: '18 ft' }, { treeHeight: '5.4864 m' }],
    ['pruning-seasons', { treeHeight: '18 ft', branchNow: '0' }, { treeHeight: '548.64 cm', branchNow: '0' }],
    [
      'zone-areas',
      {
        outline: '40 x 30 ft less 10 x 12 at back right + 12 x 10 on back',
        'lot-left': '12 ft',
        'lot-back': '20 ft',
      },
      {
        outline: '12.192 x 9.144 m less 3.048 x 3.6576 at back right + 3.6576 x 3.048 on back',
        'lot-left': '3.6576',
        'lot-back': '6.096',
      },
    ],
    ['gravel', { area: '500 sq ft', depth: '3 in' }, { area: '46.45152 m2', depth: '76.2' }],
    [
      'mesh',
      { width: '14 in', height: '8 in', count: '12' },
      { width: '355.6', height: '20.32 cm', count: '12' },
    ],
    ['sealant', { length: '243 ft', waste: '0' }, { length: '74.0664 m', waste: '0 %' }],
    ['weather-strip', { width: '16 ft', height: '7 ft' }, { width: '4.8768', height: '2.1336' }],
    ['paint', { area: '400 sq ft' }, { area: '37.161216' }],
    ['fence-metal', { places: '2', panel: '2 ft 6 in' }, { places: '2', panel: '0.762' }],
  ])('%s gives the same numbers and the same counts', (id, imperial, metric) => {
    const one = result(id, imperial, 'imperial');
    const other = result(id, metric, 'metric');
    expect(other.values.map(({ id: name }) => name)).toEqual(one.values.map(({ id: name }) => name));
    for (const [index, { id: name, value: ours, dimension }] of one.values.entries()) {
      const theirs = other.values[index]?.value ?? Number.NaN;
      expect(Math.abs(theirs - ours), name).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(ours)));
      if (dimension === 'count' && Number.isInteger(ours)) expect(theirs, name).toBe(ours);
    }
    expect(other.shopping.map(({ count }) => count)).toEqual(one.shopping.map(({ count }) => count));
    expect(other.notes).toEqual(one.notes);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CONVERSIONS,
  cubicMetres,
  degrees,
  feet,
  fromBase,
  inches,
  metres,
  ownLength,
  percent,
  readLength,
  sayArea,
  sayLength,
  sayQuantity,
  saySlope,
  sayVolume,
  slopeDegrees,
  slopePercent,
  squareFeet,
  squareMetres,
  toBase,
  type UnitId,
  type UnitSystem,
} from '../../src/quantities/index.ts';

describe('sayLength', () => {
  it.each([
    [inches(1 / 8), '1/8 in', '3 mm'],
    [inches(1 / 16), '1/16 in', '1.5 mm'],
    [inches(1 / 4), '1/4 in', '6 mm'],
    [inches(6), '6 in', '15 cm'],
    [inches(2.5), '2 1/2 in', '6.5 cm'],
    [inches(3), '3 in', '7.5 cm'],
    [feet(1), '1 ft', '30 cm'],
    [feet(2.5), '2 ft 6 in', '75 cm'],
    [feet(5), '5 ft', '1.5 m'],
    [feet(10), '10 ft', '3 m'],
    [feet(25), '25 ft', '7.5 m'],
    [feet(30), '30 ft', '9 m'],
    [feet(60), '60 ft', '18 m'],
    [feet(100), '100 ft', '30 m'],
    [feet(125), '125 ft', '38 m'],
    [feet(1200), '1,200 ft', '370 m'],
    [metres(0), '0 in', '0 cm'],
  ])('says %f m, which comes from feet and inches, as %s and %s', (length, imperial, metric) => {
    expect(sayLength(length, 'imperial').text).toBe(imperial);
    expect(sayLength(length, 'metric').text).toBe(metric);
  });

  it.each([
    [metres(0.003), '0.12 in', '3 mm'],
    [metres(0.002), '0.079 in', '2 mm'],
    [metres(0.064), '2 1/2 in', '6.4 cm'],
    [metres(0.8), '2 ft 7 in', '80 cm'],
    [metres(7.3), '24 ft', '7.3 m'],
    [metres(9.1), '30 ft', '9.1 m'],
    [metres(30), '98 ft', '30 m'],
  ])('keeps %f m, which is round in metric: %s and %s', (length, imperial, metric) => {
    expect(sayLength(length, 'imperial').text).toBe(imperial);
    expect(sayLength(length, 'metric').text).toBe(metric);
  });

  it('rounds a least distance up and a most distance down when asked', () => {
    expect(sayLength(metres(3.014), 'metric', { round: 'up' }).text).toBe('3.1 m');
    expect(sayLength(metres(3.094), 'metric', { round: 'down' }).text).toBe('3 m');
    expect(sayLength(feet(5.01), 'imperial', { round: 'up' }).text).toBe('5 ft 1 in');
    expect(sayLength(feet(5), 'imperial', { round: 'up' }).text).toBe('5 ft');
  });

  it('says any whole feet in metres within 5 in a hundred, with at most three digits that count', () => {
    for (let number = 1; number <= 1000; number++) {
      const said = sayLength(feet(number), 'metric');
      expect(Math.abs(toBase(said.value, said.unit) / feet(number) - 1), said.text).toBeLessThan(0.05);
      expect(said.text.replace(/\D/g, '').replace(/0+$/, '').length, said.text).toBeLessThanOrEqual(3);
    }
  });

  it('is read back as the same length within its rounding', () => {
    const system = fc.constantFrom<UnitSystem>('imperial', 'metric');
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 5000, noNaN: true }), system, (value, shown) => {
        const said = sayLength(metres(value), shown);
        const read = readLength(said.text, { unsafeEnd: 'low' });
        if (read.kind !== 'length') throw new Error(`not read: ${said.text}`);
        const inches = value < 0.3 ? Math.max(0.055 * value, 0.0017) : value < 6.05 ? 0.0501 : 0.16;
        const step = shown === 'imperial' && value < 100 ? inches : Math.max(0.126 * value, 1e-4);
        expect(Math.abs(read.metres - value)).toBeLessThanOrEqual(step);
        expect(toBase(said.value, said.unit)).toBeCloseTo(read.metres, 9);
      }),
    );
  });
});

describe('ownLength', () => {
  it.each([
    [feet(5), 'metric', '5 ft'],
    [inches(1 / 8), 'metric', '1/8 in'],
    [metres(0.003), 'imperial', '3 mm'],
    [metres(30), 'imperial', '30 m'],
    [feet(5), 'imperial', undefined],
    [metres(0.003), 'metric', undefined],
  ] as const)(
    'gives the number that %f m has in its source, where %s units only come near it: %s',
    (length, system, own) => {
      expect(ownLength(length, system)).toBe(own);
    },
  );
});

describe('other quantities', () => {
  it('says areas, volumes and slopes with fitting units', () => {
    expect(sayArea(squareFeet(1), 'imperial').text).toBe('144 sq in');
    expect(sayArea(squareFeet(500), 'imperial').text).toBe('500 sq ft');
    expect(sayArea(squareMetres(83.4966), 'metric').text).toBe('83.5 sq m');
    expect(sayVolume(cubicMetres(toBase(4.63, 'cuyd')), 'imperial').text).toBe('4.6 cu yd');
    expect(saySlope(percent(20)).text).toBe('20 % (11 degrees)');
    expect(sayQuantity(12_600, 'heatFlux', 'metric').text).toBe('12.6 kW/sq m');
  });

  it('keeps every unit to 1e-9 through its base unit and back', () => {
    const units = Object.keys(CONVERSIONS) as UnitId[];
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        (unit, value) => {
          expect(Math.abs(fromBase(toBase(value, unit), unit) - value)).toBeLessThanOrEqual(
            1e-9 * (value + 500),
          );
        },
      ),
    );
  });

  /** NIST Special Publication 811 (2008), appendix B.8, to the digits printed there. */
  it.each<[UnitId, UnitId, number]>([
    ['ft', 'm', 0.3048],
    ['in', 'm', 0.0254],
    ['yd', 'm', 0.9144],
    ['mi', 'm', 1609.344],
    ['sqft', 'sqm', 0.092_903_04],
    ['sqin', 'sqm', 6.4516e-4],
    ['cuft', 'cum', 0.028_316_85],
    ['cuyd', 'cum', 0.764_554_9],
    ['cuin', 'cum', 1.638_706e-5],
    ['gal', 'cum', 3.785_412e-3],
    ['floz', 'cum', 2.957_353e-5],
    ['lb', 'kg', 0.453_592_37],
    ['acre', 'sqm', 4046.873],
    ['Btu/h', 'W', 0.293_071_1],
    ['Btu/h/ft2', 'W/m2', 3.154_591],
    ['mph', 'm/s', 0.447_04],
  ])('converts 1 %s to %s as the published table does', (from, to, value) => {
    const converted = fromBase(toBase(1, from), to);
    // The table's acre rests on the survey foot, two parts in a million longer.
    expect(Math.abs(converted - value) / value).toBeLessThan(from === 'acre' ? 1e-5 : 5e-7);
  });

  it('turns percent into degrees and back', () => {
    // Arithmetic: arctan 0.20 = 11.31 degrees, arctan 0.40 = 21.80 degrees.
    expect(slopeDegrees(percent(20))).toBeCloseTo(11.31, 2);
    expect(slopeDegrees(percent(40))).toBeCloseTo(21.8, 2);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 89, noNaN: true }), (angle) => {
        expect(slopeDegrees(slopePercent(degrees(angle)))).toBeCloseTo(angle, 9);
      }),
    );
  });
});

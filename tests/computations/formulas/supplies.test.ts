import { describe, expect, it } from 'vitest';
import {
  beadFromCartridge,
  coveringVolume,
  packsFor,
  withWaste,
} from '../../../src/computations/formulas/supplies.ts';
import { SEALANT_CARTRIDGE } from '../../../src/computations/tables/supply-sizes.ts';
import { cubicMetres, fromBase, inches, metres, squareFeet, toBase } from '../../../src/quantities/index.ts';

describe('coveringVolume', () => {
  /** Coverage tables of gravel suppliers (read and recomputed): a cubic yard covers 324, 162, 108, 81 sq ft. */
  it.each([
    [1, 324],
    [2, 162],
    [3, 108],
    [4, 81],
  ])('takes a cubic yard at %i in deep for %i sq ft', (depth, area) => {
    expect(fromBase(coveringVolume(squareFeet(area), inches(depth)) as number, 'cuyd')).toBeCloseTo(1, 9);
  });

  it('takes 4.63 cubic yards for 500 sq ft at 3 in', () => {
    expect(fromBase(coveringVolume(squareFeet(500), inches(3)) as number, 'cuyd')).toBeCloseTo(4.63, 2);
  });

  it('refuses what is no area', () => {
    expect(coveringVolume(squareFeet(-1), inches(3))).toMatchObject({ kind: 'outside', field: 'area' });
  });
});

describe('beadFromCartridge', () => {
  /** Arithmetic: 10.1 US fluid ounces are 18.2 cubic inches, 24.3 ft of 1/4 by 1/4 in. */
  it('fills 24.3 ft of quarter-inch bead from 18.2 cubic inches', () => {
    expect(fromBase(SEALANT_CARTRIDGE, 'cuin')).toBeCloseTo(18.2, 1);
    const bead = beadFromCartridge(SEALANT_CARTRIDGE, inches(1 / 4), inches(1 / 4)) as number;
    expect(fromBase(bead, 'ft')).toBeCloseTo(24.3, 1);
  });

  it('refuses a bead of no width', () => {
    expect(beadFromCartridge(cubicMetres(0.0003), metres(0), inches(1 / 4))).toMatchObject({
      field: 'beadWidth',
    });
  });
});

describe('packs and waste', () => {
  it('rounds packs up and adds waste', () => {
    expect(packsFor(7.2, 1)).toBe(8);
    expect(packsFor(toBase(24, 'ft'), toBase(12, 'ft'))).toBe(2);
    expect(withWaste(100, 0.1)).toBeCloseTo(110, 9);
    expect(withWaste(100, 2)).toMatchObject({ kind: 'outside', field: 'waste' });
    expect(packsFor(1, 0)).toMatchObject({ kind: 'outside', field: 'pack' });
  });
});

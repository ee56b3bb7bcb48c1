import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grossVentArea, netFreeAreaOfOpening } from '../../../src/computations/formulas/gross-vent-area.ts';
import { requiredNetFreeArea } from '../../../src/computations/formulas/net-free-area.ts';
import {
  flowLeft,
  roundWireScreenLoss,
  squareEdgeGrillLoss,
} from '../../../src/computations/formulas/screen-loss.ts';
import { ventRatio } from '../../../src/computations/formulas/vent-ratio.ts';
import { weaveOpenFraction, weaveOpening } from '../../../src/computations/formulas/weave-open-area.ts';
import { wholeCount } from '../../../src/computations/formulas/whole-count.ts';
import { DISAGREEMENTS } from '../../../src/computations/tables/disagreements.ts';
import { VENT_COVERS } from '../../../src/computations/tables/vent-covers.ts';
import {
  ATTIC_RULE_BEFORE_2015,
  ATTIC_RULE_SINCE_2015,
  UNDER_FLOOR_RULE,
} from '../../../src/computations/tables/vent-ratios.ts';
import { PUBLISHED_WEAVES } from '../../../src/computations/tables/weaves.ts';
import { fromBase, inches, squareFeet, squareInches } from '../../../src/quantities/index.ts';

describe('requiredNetFreeArea', () => {
  /** IRC R806.2, worked examples of roofing handbooks (read). */
  it.each([
    ['1,200 sq ft at 1/300', 1200, 300, 576, 288],
    ['1,500 sq ft at 1/300', 1500, 300, 720, 360],
    ['600 sq ft at 1/150', 600, 150, 576, 288],
    ['1,500 sq ft at 1/150', 1500, 150, 1440, 720],
  ])('needs what the published example of %s says', (_, area, ratio, squareInchesNeeded, eachHalf) => {
    const needed = requiredNetFreeArea(squareFeet(area), ratio) as number;
    expect(fromBase(needed, 'sqin')).toBeCloseTo(squareInchesNeeded, 9);
    expect(fromBase(needed / 2, 'sqin')).toBeCloseTo(eachHalf, 9);
  });

  it.each([
    [-1, 150, 'ventedArea'],
    [Number.NaN, 150, 'ventedArea'],
    [100, 0, 'ratio'],
  ])('refuses an area of %f at a ratio of %f', (area, ratio, field) => {
    expect(requiredNetFreeArea(squareFeet(area), ratio)).toMatchObject({ kind: 'outside', field });
  });
});

describe('ventRatio', () => {
  /** IRC R806.2 and R408.2 as reported: either condition before 2015, both since; ground retarder under a floor. */
  it.each([
    [ATTIC_RULE_BEFORE_2015, [true, false], 300],
    [ATTIC_RULE_BEFORE_2015, [false, false], 150],
    [ATTIC_RULE_SINCE_2015, [true, false], 150],
    [ATTIC_RULE_SINCE_2015, [true, true], 300],
    [UNDER_FLOOR_RULE, [true], 1500],
    [UNDER_FLOOR_RULE, [false], 150],
    [UNDER_FLOOR_RULE, [], 150],
  ])('follows the rule %o with conditions %o', (rule, met, ratio) => {
    expect(ventRatio(rule, met)).toBe(ratio);
  });
});

describe('grossVentArea', () => {
  /** Field guide table (Journal of Light Construction, read): 10 sq ft net free area behind each cover. */
  it.each([
    ['mesh-quarter', 10],
    ['mesh-eighth', 12.5],
    ['mesh-sixteenth', 20],
    ['metal-louvre-sixteenth', 20],
    ['wood-louvre-eighth', 22.5],
    ['wood-louvre-sixteenth', 30],
  ])('needs the printed area behind %s', (id, grossSquareFeet) => {
    const factor = VENT_COVERS.find((cover) => cover.id === id)?.grossFactor ?? Number.NaN;
    const gross = grossVentArea(squareFeet(10), factor);
    expect(fromBase(gross as number, 'sqft')).toBeCloseTo(grossSquareFeet, 9);
    expect(fromBase(netFreeAreaOfOpening(squareFeet(grossSquareFeet), factor) as number, 'sqft')).toBeCloseTo(
      10,
      9,
    );
  });
});

describe('square weave', () => {
  /** ASTM E2016: openings read; open areas of catalogue pairs from memory, exact arithmetic. */
  it.each(PUBLISHED_WEAVES.map((weave) => [weave.meshPerInch, fromBase(weave.wire, 'in'), weave] as const))(
    'has the published opening or open area at %i mesh, %f in wire',
    (mesh, _, weave) => {
      const opening = weaveOpening(mesh, weave.wire) as number;
      const open = weaveOpenFraction(mesh, weave.wire) as number;
      if (weave.openingInches !== undefined)
        expect(fromBase(opening, 'in')).toBeCloseTo(weave.openingInches, 9);
      if (weave.openFractionPercent !== undefined)
        expect(100 * open).toBeCloseTo(weave.openFractionPercent, 2);
    },
  );

  it('needs, at equal wire, never less vent for a finer mesh', () => {
    const wire = fc.double({ min: 0.0001, max: 0.0008, noNaN: true });
    const mesh = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(wire, mesh, mesh, (thickness, one, other) => {
        const [coarse, fine] = one < other ? [one, other] : [other, one];
        const coarseOpen = weaveOpenFraction(coarse, inches(thickness / 0.0254)) as number;
        const fineOpen = weaveOpenFraction(fine, inches(thickness / 0.0254)) as number;
        expect(1 / fineOpen).toBeGreaterThanOrEqual(1 / coarseOpen);
      }),
    );
  });

  it('refuses a wire as thick as its pitch', () => {
    expect(weaveOpening(4, inches(0.25))).toMatchObject({ kind: 'outside', field: 'wire' });
    expect(weaveOpenFraction(0, inches(0.01))).toMatchObject({ kind: 'outside', field: 'meshPerInch' });
  });
});

describe('screen loss', () => {
  /** Blevins 1984, examples as reproduced in a public library of fluid formulas. */
  it('gives the published coefficients', () => {
    expect(roundWireScreenLoss(0.5, 100)).toBeCloseTo(2.1, 12);
    expect(squareEdgeGrillLoss(0.45)).toBeCloseTo(5.296_296_296, 9);
    expect((squareEdgeGrillLoss(0.45) as number).toFixed(4)).toBe('5.2963');
  });

  it.each([
    [0.81, 100, 'openFraction'],
    [0.5, 19, 'reynolds'],
    [0.5, 401, 'reynolds'],
  ])('refuses an open fraction of %f at a Reynolds number of %f', (open, reynolds, field) => {
    expect(roundWireScreenLoss(open, reynolds)).toMatchObject({ kind: 'outside', field });
  });

  it('leaves less flow the greater the new loss, and all of it for the same screen', () => {
    expect(flowLeft(1, 1, 1.5)).toBe(1);
    // With no other loss, four times the coefficient halves the flow: pressure goes with the square of speed.
    expect(flowLeft(1, 4, 0)).toBe(0.5);
    expect(flowLeft(0, 0, 0)).toMatchObject({ kind: 'outside' });
  });
});

describe('wholeCount', () => {
  it.each([
    [7.2, 8],
    [8, 8],
    [8 * (1 + 1e-10), 8],
    [8 * (1 + 1e-8), 9],
    [0, 0],
    [0.1 * 3 * 10, 3],
  ])('rounds %f up to %i', (needed, count) => {
    expect(wholeCount(needed)).toBe(count);
  });

  it('does not follow the published example that rounds 17.04 vents down to 17', () => {
    const wrong = DISAGREEMENTS.find(({ id }) => id === 'vents-rounded-down');
    expect(wrong?.printed).toBe(17);
    expect(wholeCount(17.04)).toBe(wrong?.byItsOwnRule);
  });

  it('never gives fewer than needed beyond the slack', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (needed) => {
        expect(wholeCount(needed) * (1 + 2e-9)).toBeGreaterThanOrEqual(needed);
        expect(wholeCount(needed)).toBeLessThanOrEqual(needed + 1);
      }),
    );
  });

  it('gives the same count from square feet and from square inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 50 }), (count, each) => {
        expect(wholeCount(squareInches(count * each * 144) / squareFeet(each))).toBe(count);
      }),
    );
  });
});

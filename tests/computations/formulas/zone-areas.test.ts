import {
  areaPathsD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathsD,
  unionD,
} from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isSimple,
  type Outline,
  type Polygon,
  perimeter,
  polygonArea,
} from '../../../src/computations/formulas/outline.ts';
import {
  attachRectangle,
  lShape,
  outlineFromWalls,
  rectangle,
} from '../../../src/computations/formulas/outline-shapes.ts';
import {
  areaBeyondLot,
  bandAreas,
  offsetArea,
  overlapArea,
} from '../../../src/computations/formulas/zone-areas.ts';
import { feet, metres } from '../../../src/quantities/index.ts';

const NEAR = metres(1.524);

/** clipper2-ts grows plans with many-sided arcs; at this tolerance its areas are good to a few parts in 100,000. */
function grown(outline: Outline, distance: number): PathsD {
  const plan = unionD(
    outline.map((polygon) => polygon.map(({ x, y }) => ({ x, y }))),
    [],
    FillRule.NonZero,
    6,
  );
  return inflatePathsD(plan, distance, JoinType.Round, EndType.Polygon, 2, 6, 1e-5);
}

/** Random plan whose corners lie round a point, in and out: usually concave. */
const starPlan = fc
  .array(
    fc.tuple(fc.double({ min: 3, max: 20, noNaN: true }), fc.double({ min: 0.2, max: 1, noNaN: true })),
    {
      minLength: 5,
      maxLength: 10,
    },
  )
  .map((spokes): Polygon => {
    const total = spokes.reduce((sum, [, share]) => sum + share, 0);
    let angle = 0;
    return spokes.map(([radius, share]) => {
      angle += (share / total) * 2 * Math.PI;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    });
  })
  .filter(isSimple);

/** Random house of upright rectangles on a half-metre grid, so that walls often line up or touch. */
const house = fc
  .array(
    fc.tuple(
      fc.integer({ min: 0, max: 24 }),
      fc.integer({ min: 0, max: 24 }),
      fc.integer({ min: 2, max: 24 }),
      fc.integer({ min: 2, max: 24 }),
    ),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map(
    (boxes): Outline =>
      boxes.map(([x, y, w, d]) => rectangle(metres(w / 2), metres(d / 2), { x: x / 2, y: y / 2 })),
  );

const distance = fc.constantFrom(0.5, 1.524, 3, 9.144, 30.48);

describe('offsetArea', () => {
  /** Published: Steiner's formula, A = P d + pi d^2 for a convex plan; the L worked out by hand. */
  it.each<[string, Polygon, number]>([
    ['a rectangle of 15 by 10 m', rectangle(metres(15), metres(10)), 83.4966],
    [
      'an L of 12 by 10 m less 6 by 5 m',
      lShape(metres(12), metres(10), metres(6), metres(5), { end: 'back', hand: 'right' }),
      73.8542,
    ],
  ])('gives the band of 1.524 m round %s', (_, plan, expected) => {
    const [band] = bandAreas([plan], [NEAR]);
    expect(band).toBeCloseTo(expected, 4);
  });

  it('is less than plain Steiner for a concave plan', () => {
    const plan = lShape(metres(12), metres(10), metres(6), metres(5), { end: 'back', hand: 'right' });
    const steiner = perimeter(plan) * NEAR + Math.PI * NEAR ** 2;
    expect((bandAreas([plan], [NEAR])[0] ?? 0) + 0.49).toBeLessThan(steiner);
  });

  it('closes a courtyard whose mouth is narrower than twice the distance, and keeps the hole', () => {
    const u: Polygon = outlineFromWalls([
      { towards: 'right', length: metres(20) },
      { towards: 'back', length: metres(20) },
      { towards: 'left', length: metres(9) },
      { towards: 'front', length: metres(5) },
      { towards: 'right', length: metres(5) },
      { towards: 'front', length: metres(10) },
      { towards: 'left', length: metres(12) },
      { towards: 'back', length: metres(10) },
      { towards: 'right', length: metres(5) },
      { towards: 'back', length: metres(5) },
      { towards: 'left', length: metres(9) },
      { towards: 'front', length: metres(20) },
    ]).polygon;
    const ours = offsetArea([u], NEAR);
    expect(ours).toBeCloseTo(areaPathsD(grown([u], NEAR)), 2);
    // The hole that stays: 12 by 10 m less 1.524 m on each side, less the rounded corners of the mouth.
    expect(ours).toBeLessThan(20 * 20 + 80 * NEAR + Math.PI * NEAR ** 2 - 30);
  });

  it('agrees with clipper2-ts on random concave plans', () => {
    fc.assert(
      fc.property(starPlan, distance, (plan, by) => {
        const theirs = areaPathsD(grown([plan], by));
        expect(Math.abs(offsetArea([plan], metres(by)) - theirs) / theirs).toBeLessThan(3e-5);
      }),
      { numRuns: 300, endOnFailure: true },
    );
  });

  it('agrees with clipper2-ts on random houses of touching and overlapping rectangles', () => {
    fc.assert(
      fc.property(house, fc.constantFrom(0, 0.5, 1, 1.524, 3, 9.144), (plan, by) => {
        const theirs = areaPathsD(grown(plan, by));
        expect(Math.abs(offsetArea(plan, metres(by)) - theirs) / theirs).toBeLessThan(3e-5);
      }),
      { numRuns: 500, endOnFailure: true },
    );
  });

  it('adds bands up to the whole', () => {
    fc.assert(
      fc.property(starPlan, (plan) => {
        const bands = bandAreas([plan], [feet(5), feet(30), feet(100)]);
        const sum = bands.reduce((total, band) => total + band, 0);
        const whole = offsetArea([plan], feet(100));
        expect(Math.abs(sum + polygonArea(plan) - whole)).toBeLessThan(1e-8 * whole);
        expect(Math.min(...bands)).toBeGreaterThan(0);
      }),
      { endOnFailure: true },
    );
  });
});

const clip = (paths: PathsD, box: { left: number; right: number; front: number; back: number }): number =>
  areaPathsD(
    intersectD(
      paths,
      [
        [
          { x: box.left, y: box.front },
          { x: box.right, y: box.front },
          { x: box.right, y: box.back },
          { x: box.left, y: box.back },
        ],
      ],
      FillRule.NonZero,
      6,
    ),
  );

describe('areaBeyondLot', () => {
  it('agrees with clipper2-ts on random plans and lots', () => {
    const gap = fc.double({ min: 0, max: 15, noNaN: true });
    fc.assert(
      fc.property(house, gap, gap, gap, gap, (plan, front, left, back, right) => {
        const xs = plan.flat().map(({ x }) => x);
        const ys = plan.flat().map(({ y }) => y);
        const lot = {
          left: Math.min(...xs) - left,
          right: Math.max(...xs) + right,
          front: Math.min(...ys) - front,
          back: Math.max(...ys) + back,
        };
        const far = { left: -200, right: 200, front: -200, back: 200 };
        const paths = grown(plan, 9.144);
        const ours = areaBeyondLot(plan, metres(9.144), {
          front: metres(front),
          left: metres(left),
          back: metres(back),
          right: metres(right),
        });
        const whole = areaPathsD(paths);
        const tolerance = 1e-4 * whole;
        expect(Math.abs(ours.total - (whole - clip(paths, lot)))).toBeLessThan(tolerance);
        expect(Math.abs(ours.bySide.left - clip(paths, { ...far, right: lot.left }))).toBeLessThan(tolerance);
        expect(Math.abs(ours.bySide.back - clip(paths, { ...far, front: lot.back }))).toBeLessThan(tolerance);
        expect(Math.abs(ours.bySide.front - clip(paths, { ...far, back: lot.front }))).toBeLessThan(
          tolerance,
        );
      }),
      { endOnFailure: true },
    );
  });

  it('counts nothing on a side without a lot line', () => {
    const { bySide, total } = areaBeyondLot([rectangle(metres(10), metres(10))], metres(9), {
      left: metres(3),
    });
    expect(bySide).toMatchObject({ front: 0, back: 0, right: 0 });
    expect(total).toBe(bySide.left);
  });
});

describe('overlapArea', () => {
  it('agrees with clipper2-ts on random neighbours', () => {
    fc.assert(
      fc.property(house, starPlan, fc.double({ min: 0, max: 30, noNaN: true }), (plan, other, away) => {
        const moved = other.map(({ x, y }) => ({ x: x + 30 + away, y }));
        const theirs = areaPathsD(intersectD(grown(plan, 9.144), grown([moved], 9.144), FillRule.NonZero, 6));
        const ours = overlapArea(
          { outline: plan, distance: metres(9.144) },
          { outline: [moved], distance: metres(9.144) },
        );
        expect(Math.abs(ours - theirs)).toBeLessThan(0.01 + 1e-4 * theirs);
      }),
      { endOnFailure: true },
    );
  });

  it('is nothing for zones that do not meet', () => {
    const mine = { outline: [rectangle(metres(10), metres(10))], distance: metres(3) };
    const far = { outline: [rectangle(metres(10), metres(10), { x: 100, y: 0 })], distance: metres(3) };
    expect(overlapArea(mine, far)).toBe(0);
  });
});

describe('attachRectangle', () => {
  it('puts a deck in the middle of the back and counts no shared wall', () => {
    const main = rectangle(metres(12), metres(8));
    const deck = attachRectangle([main], 'back', { width: metres(4), depth: metres(3) });
    expect(offsetArea([main, deck], metres(0))).toBeCloseTo(12 * 8 + 4 * 3, 9);
  });
});

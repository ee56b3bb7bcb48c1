import { type Metres, metres } from '../../quantities/index.ts';
import type { Piece } from '../formulas/boundary-piece.ts';
import { offsetBoundary } from '../formulas/offset-boundary.ts';
import { type Outline, polygonArea, type Side } from '../formulas/outline.ts';
import { attachRectangle } from '../formulas/outline-shapes.ts';
import { type Outside, outside } from '../formulas/outside.ts';
import { areaBeyondLot, areaInside, type LotDistances, overlapArea } from '../formulas/zone-areas.ts';
import { ZONE_EDGES } from '../tables/zone-bands.ts';
import type { Computation, ResultValue } from './computation.ts';
import { defineComputation, type Values, type Worked } from './define-computation.ts';
import { choiceInput, lengthInput, outlineInput } from './input-definitions.ts';
import type { NoteId } from './notes.ts';
import { areaValue } from './result-values.ts';

const SIDES: readonly Side[] = ['front', 'left', 'back', 'right'];
const BANDS = ['near', 'middle', 'far'] as const;

const houseOutline = outlineInput('outline', 'outline of the house with what is attached');

const edgeInputs = [
  lengthInput('near', 'outer edge of the first band', [0.1, 30], { default: ZONE_EDGES.near }),
  lengthInput('middle', 'outer edge of the second band', [0.1, 60], { default: ZONE_EDGES.middle }),
  lengthInput('far', 'outer edge of the third band', [0.1, 200], { default: ZONE_EDGES.far }),
];

function edges(values: Values): readonly Metres[] | Outside {
  const found = BANDS.map((band) => metres(values.number(band)));
  const rising = found.every((edge, index) => index === 0 || edge > (found[index - 1] ?? 0));
  return rising ? found : outside('far', 'edges that grow from band to band');
}

function lotOf(values: Values): LotDistances {
  const known = SIDES.map((side) => [side, values.maybe(`lot-${side}`)] as const).filter(
    ([, distance]) => distance !== undefined,
  );
  return Object.fromEntries(known);
}

/** Value of each band from the values at its edges: what the wider one has more than the narrower. */
const differences = (atEdges: readonly number[]): readonly number[] =>
  atEdges.slice(1).map((value, index) => Math.max(0, value - (atEdges[index] ?? 0)));

function beyondValues(
  outline: Outline,
  distances: readonly Metres[],
  lot: LotDistances,
  boundaries: readonly (readonly Piece[])[],
): readonly ResultValue[] {
  const beyond = distances.map((distance, index) => areaBeyondLot(outline, distance, lot, boundaries[index]));
  const sides = SIDES.filter((side) => lot[side] !== undefined).flatMap((side) =>
    differences([0, ...beyond.map(({ bySide }) => bySide[side])]).map((value, index) =>
      areaValue(
        `${BANDS[index]}-beyond-${side}`,
        `${BANDS[index]} band beyond the lot line at the ${side}`,
        value,
      ),
    ),
  );
  const totals = differences([0, ...beyond.map(({ total }) => total)]).map((value, index) =>
    areaValue(`${BANDS[index]}-beyond`, `${BANDS[index]} band beyond the lot, in all`, value),
  );
  return [...totals, ...sides];
}

const zoneAreas = defineComputation({
  id: 'zone-areas',
  title: 'Areas of the bands round a house, and what lies beyond the lot',
  group: 'zones',
  inputs: [
    houseOutline,
    ...edgeInputs,
    ...SIDES.map((side) =>
      lengthInput(`lot-${side}`, `distance from the house to the lot line at the ${side}`, [0, 1000], {
        optional: true,
        unsafe: 'low',
      }),
    ),
  ],
  work: (values) => {
    const distances = edges(values);
    if ('kind' in distances) return distances;
    const outline = values.outline('outline');
    const lot = lotOf(values);
    const boundaries = [metres(0), ...distances].map((distance) => offsetBoundary(outline, distance));
    const areas = boundaries.map((boundary) => areaInside(boundary));
    const bands = differences(areas).map((value, index) =>
      areaValue(`${BANDS[index]}`, `area of the ${BANDS[index]} band`, value),
    );
    const known = Object.keys(lot).length > 0;
    const notes: readonly NoteId[] = known
      ? ['lot-lines-straight', 'corner-on-both-sides', 'line-caps-duty', 'ask-the-neighbour']
      : ['line-caps-duty'];
    return {
      values: [
        areaValue('footprint', 'area of the house with what is attached', areas[0] ?? 0),
        ...bands,
        ...(known ? beyondValues(outline, distances, lot, boundaries.slice(1)) : []),
      ],
      sources: ['steiner-formula', 'trade-practice'],
      notes,
    };
  },
});

function neighbourOutline(values: Values, outline: Outline): Outline {
  const side = SIDES.find((name) => name === values.choice('side')) ?? 'left';
  const gap = metres(values.number('gap'));
  const along = values.maybe('along');
  const width = metres(values.number('theirWidth'));
  const depth = metres(values.number('theirDepth'));
  const at = along === undefined ? {} : { along: metres(along) };
  // The strip of the gap carries the neighbour's house to its place; only the part past it is kept.
  const carried = attachRectangle(outline, side, { width, depth: metres(gap + depth), ...at });
  const xs = carried.map(({ x }) => x);
  const ys = carried.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [front, back] = [Math.min(...ys), Math.max(...ys)];
  const box = {
    left: { left, right: right - gap, front, back },
    right: { left: left + gap, right, front, back },
    front: { left, right, front, back: back - gap },
    back: { left, right, front: front + gap, back },
  }[side];
  return [
    [
      { x: box.left, y: box.front },
      { x: box.right, y: box.front },
      { x: box.right, y: box.back },
      { x: box.left, y: box.back },
    ],
  ];
}

const zoneOverlap = defineComputation({
  id: 'zone-overlap',
  title: 'Ground that lies in the bands of two neighbouring houses',
  group: 'zones',
  inputs: [
    houseOutline,
    choiceInput(
      'side',
      "side on which the neighbour's house stands",
      SIDES.map((side) => ({ id: side, label: side })),
    ),
    lengthInput('gap', 'gap between the two houses', [0.1, 300], { unsafe: 'low' }),
    lengthInput('theirWidth', "length of the neighbour's facing wall", [1, 200]),
    lengthInput('theirDepth', "depth of the neighbour's house behind it", [1, 200]),
    lengthInput(
      'along',
      'where that wall begins, from the left or the front; in the middle unless said',
      [0, 300],
      {
        optional: true,
      },
    ),
    ...edgeInputs,
  ],
  work: (values): Worked | Outside => {
    const distances = edges(values);
    if ('kind' in distances) return distances;
    const outline = values.outline('outline');
    const theirs = neighbourOutline(values, outline);
    const within = distances.map((distance, index) => {
      const shared = overlapArea({ outline, distance }, { outline: theirs, distance });
      return areaValue(
        `${BANDS[index]}`,
        `ground within the ${BANDS[index]} edge of both houses`,
        Math.max(0, shared),
      );
    });
    const theirArea = theirs.reduce((sum, polygon) => sum + polygonArea(polygon), 0);
    return {
      values: [...within, areaValue('theirFootprint', "area of the neighbour's house", theirArea)],
      sources: ['trade-practice'],
      notes: ['ask-the-neighbour', 'line-caps-duty'],
    };
  },
});

/** Computations about the ground round a house. */
export const ZONE_COMPUTATIONS: readonly Computation[] = [zoneAreas, zoneOverlap];

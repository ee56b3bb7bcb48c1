import {
  kelvins,
  type Metres,
  metres,
  type Watts,
  watts,
  wattsPerSquareMetre,
} from '../../quantities/index.ts';
import { emittedFlux } from '../formulas/emitted-flux.ts';
import { equivalentDiameter, flameHeight } from '../formulas/flame-height.ts';
import { flameSurfaceFlux } from '../formulas/flame-surface-flux.ts';
import { heatFromFace } from '../formulas/heat-from-face.ts';
import type { Outside } from '../formulas/outside.ts';
import { pointSourceFlux } from '../formulas/point-source.ts';
import { facingViewFactor, perpendicularCornerViewFactor } from '../formulas/view-factor.ts';
import { FACE_FLUX } from '../tables/burning-things.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import {
  choiceInput,
  fluxInput,
  fractionInput,
  lengthInput,
  powerInput,
  temperatureInput,
} from './input-definitions.ts';
import { assumed, fluxValue, fractionValue, lengthValue } from './result-values.ts';

const heatRelease = powerInput('heatRelease', 'heat the fire gives off', [1000, 1e9]);
const radiantFraction = fractionInput('radiantFraction', 'part of it that is radiated', [0.05, 0.7], {
  default: 0.3,
});
const distance = lengthInput('distance', 'distance to the weak spot', [0.3, 300], { unsafe: 'low' });

const flameHeightAlone = defineComputation({
  id: 'flame-height',
  title: 'Flame height from the heat of a fire and its size on the ground',
  group: 'heat',
  inputs: [heatRelease, lengthInput('diameter', 'diameter of the fire on the ground', [0.01, 100])],
  work: (values) =>
    whenCovered(
      [flameHeight(watts(values.number('heatRelease')), metres(values.number('diameter')))],
      (height) => ({
        values: [lengthValue('flameHeight', 'mean flame height above the ground', height)],
        sources: ['heskestad-1983'] as const,
        notes: ['still-air'] as const,
      }),
    ),
});

const pointSource = defineComputation({
  id: 'heat-point-source',
  title: 'Heat at a distance from a fire seen as a point',
  group: 'heat',
  inputs: [heatRelease, radiantFraction, distance],
  work: (values) => {
    const flux = pointSourceFlux(
      watts(values.number('heatRelease')),
      values.number('radiantFraction'),
      metres(values.number('distance')),
    );
    return whenCovered([flux], (received) => ({
      values: [fluxValue('flux', 'heat received', received)],
      sources: ['nureg-1805'] as const,
      notes: ['near-by-too-high', 'embers-ignore-it', 'never-safe-distance'] as const,
    }));
  },
});

const emitted = defineComputation({
  id: 'heat-emitted',
  title: 'Heat sent out by a hot face',
  group: 'heat',
  inputs: [
    temperatureInput('temperature', 'temperature of the face', [273, 2500]),
    fractionInput('emissivity', 'emissivity, 1 for a black face', [0.01, 1], { default: 1 }),
  ],
  work: (values) =>
    whenCovered(
      [emittedFlux(kelvins(values.number('temperature')), values.number('emissivity'))],
      (flux) => ({
        values: [fluxValue('emitted', 'heat sent out', flux)],
        sources: ['bre-187'] as const,
      }),
    ),
});

function faceFactor(values: Values): number | Outside {
  const width = metres(values.number('width'));
  const height = metres(values.number('height'));
  const away = metres(values.number('distance'));
  const up = metres(values.maybe('up') ?? height / 2);
  const aside = metres(values.number('aside'));
  if (values.choice('stands') === 'facing') return facingViewFactor(width, height, away, { aside, up });
  // A level surface at the foot of the face sees two corner rectangles, one on each hand.
  const left = perpendicularCornerViewFactor(metres(Math.abs(width / 2 + aside)), height, away);
  const right = perpendicularCornerViewFactor(metres(Math.abs(width / 2 - aside)), height, away);
  return whenCovered([left, right], (first, second) =>
    Math.max(0, first * Math.sign(width / 2 + aside) + second * Math.sign(width / 2 - aside)),
  );
}

const fromFace = defineComputation({
  id: 'heat-from-face',
  title: 'Heat from a radiating rectangle such as a burning wall',
  group: 'heat',
  inputs: [
    lengthInput('width', 'width of the face', [0.01, 200]),
    lengthInput('height', 'height of the face', [0.01, 100]),
    distance,
    fluxInput('emitted', 'heat the face sends out', [1000, 300_000], { default: FACE_FLUX }),
    choiceInput(
      'stands',
      'how the weak spot stands to the face',
      [
        { id: 'facing', label: 'facing it, like a wall' },
        { id: 'level', label: 'level with its foot and at right angles, like a deck' },
      ],
      'facing',
    ),
    lengthInput('aside', 'how far aside of the middle of the face', [0, 300], { default: 0, unsafe: 'low' }),
    lengthInput('up', 'height above the foot of the face; its middle unless said', [0, 100], {
      optional: true,
    }),
  ],
  work: (values) =>
    whenCovered([faceFactor(values)], (factor) => ({
      values: [
        fractionValue('viewFactor', 'view factor', factor),
        fluxValue('flux', 'heat received', factor * values.number('emitted')),
      ],
      sources: ['bre-187', 'howell-catalog'] as const,
      notes: ['embers-ignore-it', 'never-safe-distance'] as const,
    })),
});

function solidFlame(values: Values, release: Watts, width: Metres, depth: Metres): Worked | Outside {
  return whenCovered([flameHeight(release, equivalentDiameter(width, depth))], (height): Worked | Outside => {
    const box = { width, depth, height };
    return whenCovered([flameSurfaceFlux(release, values.number('radiantFraction'), box)], (surface) => {
      const away = metres(values.number('distance'));
      const face = { width, height, emitted: wattsPerSquareMetre(surface) };
      const foot = heatFromFace(face, away, metres(0));
      const middle = heatFromFace(face, away, metres(height / 2));
      return whenCovered(
        [foot, middle],
        (low, high): Worked => ({
          values: [
            lengthValue('flameHeight', 'mean flame height', height),
            fluxValue('emitted', 'heat sent out by the flame', surface),
            fluxValue('fluxAtFoot', 'heat received at the ground', low),
            fluxValue('flux', 'heat received opposite the middle of the flame', high),
          ],
          assumptions: [
            assumed(
              fractionValue('radiantFraction', 'radiated part', values.number('radiantFraction')),
              'nist-burner-data',
            ),
          ],
          sources: ['heskestad-1983', 'nureg-1805', 'bre-187'],
          notes: ['still-air', 'receiver-mid-flame', 'embers-ignore-it', 'never-safe-distance'],
        }),
      );
    });
  });
}

const fromFire = defineComputation({
  id: 'heat-from-fire',
  title: 'Heat from a fire of known heat on a rectangle of ground',
  group: 'heat',
  inputs: [
    heatRelease,
    lengthInput('width', 'width of the fire, along the wall', [0.1, 30]),
    lengthInput('depth', 'depth of the fire, away from the wall', [0.1, 30]),
    lengthInput('distance', 'distance from its edge to the weak spot', [0.3, 300], { unsafe: 'low' }),
    { ...radiantFraction, default: 0.25 },
  ],
  work: (values) =>
    solidFlame(
      values,
      watts(values.number('heatRelease')),
      metres(values.number('width')),
      metres(values.number('depth')),
    ),
});

/** Computations about flame and radiant heat in general. */
export const HEAT_COMPUTATIONS: readonly Computation[] = [
  flameHeightAlone,
  pointSource,
  emitted,
  fromFace,
  fromFire,
];

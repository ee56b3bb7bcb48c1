import { feet, type Metres, metres, wattsPerSquareMetre } from '../../quantities/index.ts';
import { distanceBelow } from '../formulas/distance-below.ts';
import { heatFromFace, type RadiatingFace } from '../formulas/heat-from-face.ts';
import { isOutside, type Outside } from '../formulas/outside.ts';
import { BURNING_THINGS, type BurningThing, FACE_FLUX } from '../tables/burning-things.ts';
import { type CriterionId, HEAT_CRITERIA, type HeatCriterion, RECEIVERS } from '../tables/heat-criteria.ts';
import type { Assumption, Computation, ResultValue } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { choiceInput, fluxInput, lengthInput } from './input-definitions.ts';
import type { NoteId } from './notes.ts';
import { assumed, fluxValue, fractionValue, lengthValue } from './result-values.ts';

const NEAREST = metres(0.1);
const FARTHEST = metres(1000);

function drawFace(values: Values, thing: BurningThing): RadiatingFace {
  const height = metres(values.maybe('flameHeight') ?? thing.flameHeights * values.number('height'));
  return {
    width: metres(values.number('width')),
    height,
    emitted: wattsPerSquareMetre(values.number('emitted')),
  };
}

const midFlame = (face: RadiatingFace) => (distance: Metres) => {
  const heat = heatFromFace(face, distance, metres(face.height / 2));
  return isOutside(heat) ? Number.NaN : heat;
};

type Judged = {
  readonly values: readonly ResultValue[];
  readonly keep: readonly Metres[];
  readonly notes: readonly NoteId[];
};

/** Compares a heat with one criterion; a distance comes only from a threshold that was read. */
function judge(
  criterion: HeatCriterion,
  flux: number,
  face: RadiatingFace,
  lasting: boolean,
): Judged | Outside {
  const ratio = fractionValue(
    `ratio-${criterion.id}`,
    `heat received, as part of: ${criterion.label}`,
    flux / criterion.flux,
  );
  if (!criterion.threshold) return { values: [ratio], keep: [], notes: ['tested-no-threshold'] };
  if (criterion.exposure === 'long' && !lasting) return { values: [ratio], keep: [], notes: ['flares-only'] };
  if (criterion.status !== 'read') return { values: [ratio], keep: [], notes: ['threshold-from-memory'] };
  return whenCovered(
    [distanceBelow(midFlame(face), criterion.flux, NEAREST, FARTHEST)],
    (below): Judged => ({
      values: [
        ratio,
        lengthValue(`below-${criterion.id}`, `distance at which it falls below: ${criterion.label}`, below),
      ],
      keep: [below],
      notes: [],
    }),
  );
}

function assumptionsOf(
  face: RadiatingFace,
  criteria: readonly HeatCriterion[],
  given: boolean,
): readonly Assumption[] {
  return [
    assumed(
      lengthValue('flameHeight', 'flame height', face.height),
      given ? 'arithmetic' : 'flame-size-memory',
    ),
    assumed(fluxValue('emitted', 'heat sent out by the burning face', face.emitted), 'bre-187'),
    ...criteria.map((criterion) =>
      assumed(fluxValue(criterion.id, criterion.label, criterion.flux), criterion.source),
    ),
  ];
}

function heatOn(values: Values): Worked | Outside {
  const thing = BURNING_THINGS.find(({ id }) => id === values.choice('thing'));
  const receiver = RECEIVERS.find(({ id }) => id === values.choice('receiver'));
  if (thing === undefined || receiver === undefined) throw new Error('a checked choice is not in its table');
  const face = drawFace(values, thing);
  const distance = metres(values.number('distance'));
  const up = metres(values.maybe('receiverHeight') ?? face.height / 2);
  return whenCovered([heatFromFace(face, distance, up)], (flux): Worked | Outside => {
    const criteria = receiver.criteria.map((id: CriterionId): HeatCriterion => HEAT_CRITERIA[id]);
    const judged = criteria.map((criterion) => judge(criterion, flux, face, thing.lasting));
    const refusal = judged.find(isOutside);
    if (refusal !== undefined) return refusal;
    const sound = judged.filter((result): result is Judged => !isOutside(result));
    const asked = [values.maybe('customary'), values.maybe('code')].filter((value) => value !== undefined);
    const keep = [...sound.flatMap((result) => result.keep), ...asked];
    const longest =
      keep.length === 0 ? [] : [lengthValue('stricter', 'the longest of these distances', Math.max(...keep))];
    return {
      values: [
        fluxValue('flux', 'heat received', flux),
        ...sound.flatMap((result) => result.values),
        ...longest,
      ],
      assumptions: assumptionsOf(face, criteria, values.maybe('flameHeight') !== undefined),
      sources: ['bre-187', ...criteria.map((criterion) => criterion.source)],
      notes: [
        ...new Set<NoteId>([
          'never-safe-distance',
          'embers-ignore-it',
          'still-air',
          'stricter-wins',
          ...(values.maybe('receiverHeight') === undefined ? (['receiver-mid-flame'] as const) : []),
          ...(thing.id === 'fence' ? (['fence-in-part'] as const) : []),
          ...sound.flatMap((result) => result.notes),
        ]),
      ],
    };
  });
}

const heatFromThing = defineComputation({
  id: 'heat-from-thing',
  title: 'Heat on a weak spot from a burning shrub, pile, fence, shed, house or deck contents',
  group: 'heat',
  inputs: [
    choiceInput('thing', 'what burns', BURNING_THINGS),
    lengthInput('height', 'height of the thing', [0.1, 30]),
    lengthInput('width', 'width of the thing, along the wall', [0.1, 60]),
    lengthInput('distance', 'distance from its face to the weak spot', [NEAREST, 100], { unsafe: 'low' }),
    choiceInput('receiver', 'the weak spot', RECEIVERS),
    lengthInput(
      'receiverHeight',
      'height of the weak spot above the ground; mid-flame unless said',
      [0, 30],
      {
        optional: true,
      },
    ),
    lengthInput('flameHeight', 'flame height above the ground, when known better', [0.1, 60], {
      optional: true,
    }),
    fluxInput('emitted', 'heat sent out by the burning face', [1000, 300_000], { default: FACE_FLUX }),
    lengthInput('customary', 'customary distance', [0, feet(300)], { optional: true }),
    lengthInput('code', 'distance in the code of the place', [0, feet(300)], { optional: true }),
  ],
  work: heatOn,
});

/** Heat from the burnable things near a house. */
export const THING_COMPUTATIONS: readonly Computation[] = [heatFromThing];

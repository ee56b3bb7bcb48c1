import { type SquareMetres, squareInches, squareMetres } from '../../quantities/index.ts';
import { grossVentArea, netFreeAreaOfOpening } from '../formulas/gross-vent-area.ts';
import { type Outside, outside } from '../formulas/outside.ts';
import { wholeCount } from '../formulas/whole-count.ts';
import { VENT_COVERS } from '../tables/vent-covers.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { areaInput, choiceInput, countInput } from './input-definitions.ts';
import { areaValue, countValue, fractionValue } from './result-values.ts';
import { neededArea, ratioInputs, ventRequired } from './vent-required.ts';

const PURPOSES = [
  { id: 'attic', label: 'attic vent' },
  { id: 'under-floor', label: 'under-floor (crawl space) vent' },
  { id: 'dryer', label: 'clothes-dryer outlet' },
  { id: 'flue', label: 'flue, chimney, combustion-air or plumbing vent' },
];

const purposeInput = choiceInput('purpose', 'what the opening is for', PURPOSES, 'attic');

/** Openings that carry burnt gas, lint or room air are never screened. */
function meshable(values: Values): Outside | undefined {
  const purpose = values.choice('purpose');
  if (purpose !== 'dryer' && purpose !== 'flue') return undefined;
  return outside(
    'purpose',
    'attic and under-floor vents: a dryer outlet or flue is never screened with mesh',
  );
}

const coverInput = (id: string, label: string, defaultId?: string) =>
  choiceInput(id, label, VENT_COVERS, defaultId);

const factorOf = (cover: string): number =>
  VENT_COVERS.find(({ id }) => id === cover)?.grossFactor ?? Number.NaN;

function passes(gross: number, cover: string, printed: number | undefined): SquareMetres | Outside {
  return printed === undefined
    ? netFreeAreaOfOpening(squareMetres(gross), factorOf(cover))
    : squareMetres(printed);
}

const ventPasses = defineComputation({
  id: 'vent-passes',
  title: 'Net free area that a vent gives behind its cover',
  group: 'vents',
  inputs: [
    purposeInput,
    areaInput('gross', 'gross opening of the vent', [0, 100], {
      imperial: 'sqin',
      metric: 'sqcm',
      unsafe: 'low',
    }),
    coverInput('cover', 'what covers it'),
    areaInput('printed', 'net free area printed on the vent', [0, 100], {
      imperial: 'sqin',
      metric: 'sqcm',
      optional: true,
      unsafe: 'low',
    }),
  ],
  work: (values) => {
    const printed = values.maybe('printed');
    const net = meshable(values) ?? passes(values.number('gross'), values.choice('cover'), printed);
    return whenCovered(
      [net],
      (area): Worked => ({
        values: [areaValue('netFreeArea', 'net free area', area)],
        sources: ['jlc-vent-table'],
        notes: ['printed-area-wins', 'mesh-stops-embers-only', 'appliance-air-first'],
      }),
    );
  },
});

function shortfall(values: Values): Worked | Outside {
  const count = values.number('count');
  const gross = values.number('grossEach');
  const then = values.choice('coverThen');
  const before = passes(gross, values.choice('coverNow'), values.maybe('printedNow'));
  const after = passes(gross, then, values.maybe('printedThen'));
  return whenCovered(
    [neededArea(values).needed, before, after],
    (needed, nowEach, thenEach): Worked | Outside => {
      const now = nowEach * count;
      const later = thenEach * count;
      const missing = Math.max(0, needed - later);
      // Noise of a billionth is no shortfall.
      const short = missing > 1e-9 * needed ? missing : 0;
      return whenCovered(
        [grossVentArea(squareMetres(short), factorOf(then))],
        (grossMissing): Worked => ({
          values: [
            areaValue('needed', 'net free area needed', needed),
            areaValue('now', 'net free area now', now),
            areaValue('then', 'net free area with the new cover', later),
            fractionValue(
              'keeps',
              'part of the present net free area that is left',
              now === 0 ? 1 : later / now,
            ),
            areaValue('missing', 'net free area missing then', short),
            areaValue('grossMissing', 'gross opening to add behind the new cover', grossMissing),
            countValue('ventsToAdd', 'vents of the same size to add', wholeCount(short / thenEach)),
          ],
          sources: ['irc-r806', 'irc-r408', 'jlc-vent-table'],
          notes: [
            'remesh-add-or-listed',
            'rounded-up',
            'printed-area-wins',
            'appliance-air-first',
            'fine-mesh-clogs',
          ],
        }),
      );
    },
  );
}

const small = { imperial: 'sqin', metric: 'sqcm', unsafe: 'low' } as const;

const ventShortfall = defineComputation({
  id: 'vent-shortfall',
  title: 'Vent area missing when the mesh is changed for a finer one',
  group: 'vents',
  inputs: [
    purposeInput,
    ...ratioInputs,
    countInput('count', 'number of vents of this size', [0, 1000], { whole: true, unsafe: 'low' }),
    areaInput('grossEach', 'gross opening of each vent', [squareInches(1), 10], small),
    coverInput('coverNow', 'what covers them now', 'mesh-quarter'),
    coverInput('coverThen', 'what will cover them', 'mesh-eighth'),
    areaInput('printedNow', 'net free area printed on each vent as it is', [1e-6, 10], {
      ...small,
      optional: true,
    }),
    areaInput('printedThen', 'net free area printed for each vent as it will be', [1e-6, 10], {
      ...small,
      optional: true,
    }),
  ],
  work: (values) => meshable(values) ?? shortfall(values),
});

/** Computations about the area of vents. */
export const VENT_COMPUTATIONS: readonly Computation[] = [ventRequired, ventPasses, ventShortfall];

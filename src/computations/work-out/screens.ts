import { inches, metres, metresPerSecond } from '../../quantities/index.ts';
import type { Outside } from '../formulas/outside.ts';
import { flowLeft, roundWireScreenLoss, screenReynolds } from '../formulas/screen-loss.ts';
import { weaveOpenFraction, weaveOpening } from '../formulas/weave-open-area.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Values, type Worked, whenCovered } from './define-computation.ts';
import { countInput, lengthInput, speedInput } from './input-definitions.ts';
import { assumed, countValue, fractionValue, lengthValue } from './result-values.ts';

const wire = { imperial: 'in', metric: 'mm' } as const;

const weaveOpenArea = defineComputation({
  id: 'weave-open-area',
  title: 'Clear opening and open area of a square wire mesh',
  group: 'vents',
  inputs: [
    countInput('meshPerInch', 'wires an inch (8 for "1/8 in mesh")', [1, 60]),
    lengthInput('wire', 'thickness of the wire', [0.000_02, 0.02], wire),
  ],
  work: (values) => {
    const mesh = values.number('meshPerInch');
    const thickness = metres(values.number('wire'));
    return whenCovered(
      [weaveOpening(mesh, thickness), weaveOpenFraction(mesh, thickness)],
      (opening, fraction): Worked => ({
        values: [
          lengthValue('opening', 'clear opening between two wires', opening),
          fractionValue('openFraction', 'open part of the mesh', fraction),
        ],
        sources: ['astm-e2016'],
        notes: ['mesh-stops-embers-only'],
      }),
    );
  },
});

type Screen = { readonly open: number; readonly loss: number; readonly reynolds: number };

function screen(values: Values, when: 'now' | 'then'): Screen | Outside {
  const mesh = values.number(`mesh-${when}`);
  const thickness = metres(values.number(`wire-${when}`));
  return whenCovered(
    [weaveOpening(mesh, thickness), weaveOpenFraction(mesh, thickness)],
    (opening, open): Screen | Outside => {
      const reynolds = screenReynolds(opening, metresPerSecond(values.number('speed')));
      return whenCovered([roundWireScreenLoss(open, reynolds)], (loss): Screen => ({ open, loss, reynolds }));
    },
  );
}

const screenFlow = defineComputation({
  id: 'screen-flow',
  title: 'Air flow that is left when a vent screen is changed for a finer one',
  group: 'vents',
  inputs: [
    countInput('mesh-now', 'wires an inch now', [1, 60], { default: 4 }),
    lengthInput('wire-now', 'thickness of its wire', [0.000_02, 0.02], { ...wire, default: inches(0.035) }),
    countInput('mesh-then', 'wires an inch then', [1, 60], { default: 8 }),
    lengthInput('wire-then', 'thickness of its wire', [0.000_02, 0.02], { ...wire, default: inches(0.017) }),
    speedInput('speed', 'speed of the air before the screen', [0.01, 10], { default: 0.8 }),
    countInput('restLoss', 'loss coefficient of the opening itself', [0, 20], { default: 1.5 }),
  ],
  work: (values) =>
    whenCovered([screen(values, 'now'), screen(values, 'then')], (now, then): Worked | Outside => {
      const rest = values.number('restLoss');
      return whenCovered(
        [flowLeft(now.loss, then.loss, rest)],
        (left): Worked => ({
          values: [
            countValue('lossNow', 'loss coefficient of the screen now', now.loss),
            countValue('lossThen', 'loss coefficient of the screen then', then.loss),
            fractionValue('flowLeft', 'part of the flow left at the same pressure', left),
            countValue('reynoldsNow', 'Reynolds number now', now.reynolds),
            countValue('reynoldsThen', 'Reynolds number then', then.reynolds),
          ],
          assumptions: [assumed(countValue('restLoss', 'loss of the opening itself', rest), 'flow-memory')],
          sources: ['blevins-1984', 'astm-e2016'],
          notes: ['fine-mesh-clogs', 'printed-area-wins'],
        }),
      );
    }),
});

/** Computations about wire mesh. */
export const SCREEN_COMPUTATIONS: readonly Computation[] = [weaveOpenArea, screenFlow];

import { squareMetres } from '../../quantities/index.ts';
import { grossVentArea } from '../formulas/gross-vent-area.ts';
import { requiredNetFreeArea } from '../formulas/net-free-area.ts';
import type { Outside } from '../formulas/outside.ts';
import { VENT_COVERS } from '../tables/vent-covers.ts';
import type { Computation } from './computation.ts';
import { defineComputation, type Worked, whenCovered } from './define-computation.ts';
import { areaInput, choiceInput, countInput } from './input-definitions.ts';
import type { NoteId } from './notes.ts';
import { areaValue, countValue } from './result-values.ts';

const factorOf = (cover: string): number =>
  VENT_COVERS.find(({ id }) => id === cover)?.grossFactor ?? Number.NaN;

const NOTES: readonly NoteId[] = [
  'remesh-add-or-listed',
  'appliance-air-first',
  'mesh-stops-embers-only',
  'printed-area-wins',
  'fine-mesh-clogs',
];

function withArea(area: number, ratio: number, now: number, then: number): Worked | Outside {
  return whenCovered([requiredNetFreeArea(squareMetres(area), ratio)], (needed): Worked | Outside =>
    whenCovered(
      [grossVentArea(needed, now), grossVentArea(needed, then)],
      (grossNow, grossThen): Worked => ({
        values: [
          countValue('factor', 'times the gross opening of now', then / now),
          areaValue('netFreeArea', 'net free area needed', needed),
          areaValue('grossNow', 'gross opening needed behind the present cover', grossNow),
          areaValue('grossThen', 'gross opening needed behind the new cover', grossThen),
          areaValue('grossMissing', 'to add, if the vents just do now', Math.max(0, grossThen - grossNow)),
        ],
        sources: ['jlc-vent-table', 'irc-r806', 'irc-r408'],
        notes: [...NOTES, 'half-high-half-low', 'local-code-decides'],
      }),
    ),
  );
}

/** How much larger vents must be behind a new cover, without or with the area that they serve. */
export const VENT_REMESH: Computation = defineComputation({
  id: 'vent-remesh',
  title: 'How much larger vents must be behind finer mesh',
  group: 'vents',
  inputs: [
    choiceInput('coverNow', 'what covers them now', VENT_COVERS, 'mesh-quarter'),
    choiceInput('coverThen', 'what will cover them', VENT_COVERS, 'mesh-eighth'),
    areaInput('ventedArea', 'floor area of the attic or under-floor space', [0, 10_000], { optional: true }),
    countInput('ratio', 'area for each unit of net free area', [50, 3000], { default: 150, unsafe: 'low' }),
  ],
  work: (values) => {
    const [now, then] = [factorOf(values.choice('coverNow')), factorOf(values.choice('coverThen'))];
    const area = values.maybe('ventedArea');
    if (area !== undefined) return withArea(area, values.number('ratio'), now, then);
    return {
      values: [countValue('factor', 'times the gross opening of now', then / now)],
      sources: ['jlc-vent-table'],
      notes: NOTES,
    };
  },
});

import type { HouseOutcome } from '../computations/house/house-computation.ts';
import { feet, fromBase } from '../quantities/index.ts';
import type { Values } from '../wording/say.ts';

type Result = HouseOutcome & { readonly kind: 'result' };

/** Heat of full sun on a face turned to it: reference irradiance of IEC 60904-3, from memory. */
const fullSunWattsPerSquareMetre = 1000;

/** What a heat does to wood or glass, from the hardest to the mildest: the first whose ratio is reached is said. */
const effects = [
  ['ratio-wood-short', 'lights'],
  ['ratio-wood-long', 'slowly'],
  ['ratio-single-fall', 'falls'],
  ['ratio-double-fall', 'falls'],
  ['ratio-single-crack', 'cracks'],
  ['ratio-tempered-tested', 'untested'],
] as const;

/** A worked-out distance is an estimate: to the next whole foot is fine enough, and on the safe side. */
const nextFoot = (lengthMetres: number): number => feet(Math.ceil(fromBase(lengthMetres, 'ft') - 1e-6));

/** A heat for somebody who does not think in kilowatts: how many times full sun, and what it does to wood or glass. */
export function heatValues({ values, notes }: Result): Values {
  const valued = (id: string) => values.find((one) => one.id === id)?.value;
  const flux = valued('flux');
  if (flux === undefined) return {};
  const reached = effects.find(([ratio, effect]) => {
    // What flares is over before a heat can do its work slowly.
    if (effect === 'slowly' && notes.includes('flares-only')) return false;
    return (valued(ratio) ?? 0) >= 1;
  });
  const stood = valued('ratio-tempered-tested') === undefined ? 'less' : 'stood';
  const kind = values.some(({ id }) => id.startsWith('ratio-wood')) ? 'wood' : 'glass';
  const effect = reached?.[1] ?? stood;
  const far = (name: string, id: string): Values => {
    const lengthMetres = valued(id);
    return lengthMetres === undefined ? {} : { [name]: { metres: nextFoot(lengthMetres) } };
  };
  return {
    ...far('belowWoodShort', 'below-wood-short'),
    ...far('stricter', 'stricter'),
    suns: Number((flux / fullSunWattsPerSquareMetre).toPrecision(2)),
    does: { text: `report.computed.does.${kind}`, values: { effect } },
    heat: effect,
  };
}

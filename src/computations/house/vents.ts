import { inches } from '../../quantities/index.ts';
import { floorArea } from './extent.ts';
import { coversOf, coverToChange, coverToCome, isEighthEnough } from './finer-mesh.ts';
import { ofLimit, ofOption, plain } from './given.ts';
import type { House } from './house.ts';
import type { HouseComputation, Wanted } from './house-computation.ts';

const rule = (house: House) => ofLimit(house, 'meshMax', 'length')?.shown ?? [];

function remesh(house: House, questions: readonly string[], ratio: string): Wanted | undefined {
  for (const question of questions) {
    const cover = coverToChange(house, coversOf(house, question));
    if (cover === undefined) continue;
    const inTable = cover === 'quarter' || cover === 'eighth';
    return {
      kind: 'inputs',
      inputs: {
        coverNow: ofOption(question, cover, cover === 'eighth' ? 'mesh-eighth' : 'mesh-quarter'),
        coverThen: plain(coverToCome(house)),
        ventedArea: floorArea(house),
        ratio: ofLimit(house, ratio, 'count'),
      },
      beside: rule(house),
      notes: inTable ? [] : ['open-as-coarse'],
    };
  }
  return undefined;
}

const attic: HouseComputation = {
  id: 'vents-attic',
  per: 'house',
  runs: 'vent-remesh',
  at: (house) => remesh(house, ['vents.high-mesh', 'vents.roof-mesh'], 'ventAttic'),
};

const underFloor: HouseComputation = {
  id: 'vents-floor',
  per: 'house',
  runs: 'vent-remesh',
  at: (house) => remesh(house, ['vents.low-mesh'], 'ventUnder'),
};

/** A usual weave of 16 wires an inch. */
const SIXTEENTH = { 'mesh-then': plain(16), 'wire-then': plain(inches(0.011)) };

const flow: HouseComputation = {
  id: 'vents-flow',
  per: 'house',
  runs: 'screen-flow',
  at: (house) => {
    const questions = ['vents.high-mesh', 'vents.roof-mesh', 'vents.low-mesh'];
    const question = questions.find((id) => coversOf(house, id).includes('quarter'));
    if (question === undefined) return undefined;
    return {
      kind: 'inputs',
      inputs: isEighthEnough(house) ? {} : SIXTEENTH,
      beside: [...ofOption(question, 'quarter', '').shown, ...rule(house)],
      notes: ['usual-weaves'],
    };
  },
};

/** What finer mesh does to the vents. */
export const VENTS_OF_HOUSE: readonly HouseComputation[] = [attic, underFloor, flow];

import type { Spot } from '../../answers/condition.ts';
import { feet, inches } from '../../quantities/index.ts';
import { areaValue } from '../work-out/result-values.ts';
import { floorArea, wallAt } from './extent.ts';
import { coversOf, coverToChange, factorToCome, sidesToChange } from './finer-mesh.ts';
import { assumed, derived, ofLimit, ofMeasure, plain } from './given.ts';
import { chosen, type House, has, limitOf } from './house.ts';
import type { HouseComputation, Wanted } from './house-computation.ts';

const GROUND_TO_REPLACE = ['bark', 'fine-mulch', 'grass', 'dry-grass', 'bare'];

/** The strip along one side, with half of the round corner at each end: over four sides Steiner's band. */
const gravel: HouseComputation = {
  id: 'gravel',
  per: 'side',
  runs: 'gravel',
  at: (house, spot) => {
    const wall = wallAt(house, spot.side);
    const reach = ofLimit(house, 'zone0', 'length');
    if (!wall || !reach || !has(house, 'zone0.ground', GROUND_TO_REPLACE, spot)) return undefined;
    const [length, out] = [Number(wall.value), Number(reach.value)];
    const area = length * out + (Math.PI * out * out) / 4;
    return {
      kind: 'inputs',
      inputs: { area: derived(area, wall, reach), depth: assumed('gravel-depth', inches(3), 'length') },
      also: () => [areaValue('covered', 'ground covered', area)],
      notes: ['whole-side'],
    };
  },
};

/** Mesh for the vents of a part of the house, as if they were one opening, just large enough behind the new mesh. */
function meshFor(house: House, ratio: string, parts: number): Wanted | undefined {
  const [area, rule] = [floorArea(house), ofLimit(house, ratio, 'count')];
  if (!area || !rule || parts === 0) return undefined;
  const opening = (Number(area.value) / Number(rule.value)) * (factorToCome(house) / parts);
  const edge = derived(Math.sqrt(opening), area, rule);
  return {
    kind: 'inputs',
    inputs: { width: edge, height: plain(Math.sqrt(opening)), count: plain(1) },
    notes: ['one-opening'],
  };
}

const roofToo = (house: House): number => (coverToChange(house, coversOf(house, 'vents.roof-mesh')) ? 1 : 0);
const atticParts = (house: House): number => sidesToChange(house, 'vents.high-mesh').length + roofToo(house);

function meshAt(
  house: House,
  question: string,
  spot: Spot,
  ratio: string,
  parts: number,
): Wanted | undefined {
  return coverToChange(house, chosen(house, question, spot)) === undefined
    ? undefined
    : meshFor(house, ratio, parts);
}

const meshHigh: HouseComputation = {
  id: 'mesh-high',
  per: 'side',
  runs: 'mesh',
  at: (house, spot) => meshAt(house, 'vents.high-mesh', spot, 'ventAttic', atticParts(house)),
};

const meshRoof: HouseComputation = {
  id: 'mesh-roof',
  per: 'house',
  runs: 'mesh',
  at: (house) => meshAt(house, 'vents.roof-mesh', {}, 'ventAttic', atticParts(house)),
};

const meshFloor: HouseComputation = {
  id: 'mesh-floor',
  per: 'side',
  runs: 'mesh',
  at: (house, spot) =>
    meshAt(house, 'vents.low-mesh', spot, 'ventUnder', sidesToChange(house, 'vents.low-mesh').length),
};

/** A bead along the whole side, as wide as the widest gap and half as deep, yet not thinner than an eighth of an inch. */
const eaveSealant: HouseComputation = {
  id: 'eave-sealant',
  per: 'side',
  runs: 'sealant',
  at: (house, spot) => {
    const wall = wallAt(house, spot.side);
    const gap = ofMeasure(house, 'eaves.gap', 'length', spot);
    const most = limitOf(house, 'eaveGapMax');
    if (!wall || !gap || most === undefined || Number(gap.value) <= most) return undefined;
    const depth = Math.max(Number(gap.value) / 2, inches(1 / 8));
    return {
      kind: 'inputs',
      inputs: { length: wall, beadWidth: gap, beadDepth: assumed('bead-depth', depth, 'length') },
      notes: ['whole-side'],
    };
  },
};

const garageStrip: HouseComputation = {
  id: 'garage-strip',
  per: 'house',
  runs: 'weather-strip',
  at: (house) => {
    if (!has(house, 'openings.garage-light', ['light'])) return undefined;
    return {
      kind: 'inputs',
      inputs: {
        width: assumed('garage-width', feet(16), 'length'),
        height: assumed('garage-height', feet(7), 'length'),
      },
      notes: ['size-assumed'],
    };
  },
};

const fenceEnd: HouseComputation = {
  id: 'fence-end',
  per: 'side',
  runs: 'fence-metal',
  at: (house, spot) => {
    const reach = ofLimit(house, 'fenceFirst', 'length');
    if (!reach || !has(house, 'fences.meets', ['wood', 'vinyl'], spot)) return undefined;
    return {
      kind: 'inputs',
      inputs: { places: plain(1), reach, height: assumed('fence-height', feet(6), 'length') },
    };
  },
};

/** What to buy for jobs by hand and from the shop. */
export const SUPPLIES_OF_HOUSE: readonly HouseComputation[] = [
  gravel,
  meshHigh,
  meshRoof,
  meshFloor,
  eaveSealant,
  garageStrip,
  fenceEnd,
];

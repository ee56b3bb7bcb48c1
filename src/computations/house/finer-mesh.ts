import { VENT_COVERS } from '../tables/vent-covers.ts';
import { chosen, type House, limitOf, sidesWhere } from './house.ts';

const COARSE = ['quarter', 'plastic', 'torn', 'none'];
/** An eighth of an inch is a little over 3 mm: from here on a place still allows eighth-inch mesh. */
const EIGHTH_FROM_METRES = 0.003;

/** Whether eighth-inch mesh is fine enough for the place. */
export const isEighthEnough = (house: House): boolean =>
  (limitOf(house, 'meshMax') ?? EIGHTH_FROM_METRES) >= EIGHTH_FROM_METRES;

/** Among the covers of vents one that must be changed; nothing when all may stay. */
export function coverToChange(house: House, covers: readonly string[]): string | undefined {
  const coarse = covers.find((cover) => COARSE.includes(cover));
  return coarse ?? (isEighthEnough(house) ? undefined : covers.find((cover) => cover === 'eighth'));
}

/** The covers that a question names, on all sides where it is asked by side. */
export function coversOf(house: House, question: string): readonly string[] {
  if (house.question(question)?.by !== 'side') return chosen(house, question);
  return house.facts.sides.flatMap((side) => chosen(house, question, { side }));
}

/** The cover that is to come. */
export const coverToCome = (house: House): 'mesh-eighth' | 'mesh-sixteenth' =>
  isEighthEnough(house) ? 'mesh-eighth' : 'mesh-sixteenth';

/** Gross opening for each unit of net free area behind the cover that is to come. */
export const factorToCome = (house: House): number =>
  VENT_COVERS.find(({ id }) => id === coverToCome(house))?.grossFactor ?? Number.NaN;

/** The sides on which a question names a cover that must be changed. */
export const sidesToChange = (house: House, question: string) =>
  sidesWhere(house, (spot) => coverToChange(house, chosen(house, question, spot)) !== undefined);

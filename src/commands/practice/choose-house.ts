import { layOutPath } from '../../answers/path.ts';
import { placesOf } from '../../findings/place.ts';
import { makeHouse, playHouse } from '../../practice/house/make-house.ts';
import type { PracticeHouse } from '../../practice/house/practice-house.ts';
import type { Practice } from '../../practice/practice.ts';
import type { LevelName } from '../../practice/schema/practice-file.ts';
import { ProgramError } from '../program-error.ts';
import { readHouseFile, readKeyFile } from './read-house-file.ts';

/** What a trainee or supervisor chooses of a house. */
export interface HouseOptions {
  readonly house?: string;
  readonly key?: string;
  readonly level?: string;
  readonly place?: string;
}

const levels: readonly LevelName[] = ['easy', 'ordinary', 'hard'];

function levelOf(name: string | undefined): LevelName {
  const found = levels.find((one) => one === (name ?? 'ordinary'));
  if (!found) throw new ProgramError(`There is no level "${name}". Say one of: ${levels.join(', ')}.`);
  return found;
}

function checkPlace(practice: Practice, place: string | undefined): void {
  const { rulebooks } = practice.programme.checklist.flow;
  if (place === undefined || rulebooks.some((one) => one.id === place)) return;
  throw new ProgramError(
    `There is no place "${place}". Say one of: ${rulebooks.map((one) => one.id).join(', ')}.`,
  );
}

function fromFile(
  practice: Practice,
  path: string,
  level: LevelName,
  seed: number,
  key: string | undefined,
): PracticeHouse {
  const { checklist } = practice.programme;
  const { name, sheet } = readHouseFile(checklist.index, path);
  const laidOut = layOutPath(checklist.index, sheet);
  const known = new Set(
    checklist.flow.findings.flatMap((finding) =>
      placesOf(finding.per, laidOut).map((place) => finding.id + place.suffix),
    ),
  );
  const own = key === undefined ? {} : { key: readKeyFile(key, known) };
  return playHouse(practice.maker, { name, sheet, level, seed, ...own });
}

/** The house to practise on: made up from a number, or from an answer file with its key; `next` is the number to take otherwise. */
export function chooseHouse(practice: Practice, options: HouseOptions, next: number): PracticeHouse {
  const level = levelOf(options.level);
  const { house, key, place } = options;
  checkPlace(practice, place);
  if (house !== undefined && !/^\d{1,9}$/.test(house)) return fromFile(practice, house, level, next, key);
  if (key !== undefined)
    throw new ProgramError('A key goes with a house of your own: add --house house.yaml.');
  return makeHouse(practice.maker, house === undefined ? next : Number(house), level, place);
}

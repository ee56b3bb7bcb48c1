import { type Metres, metres, readLength, type UnitOf, type UnitSystem } from '../../quantities/index.ts';
import { isSimple, type Outline, type Polygon, type Side, type WallStep } from '../formulas/outline.ts';
import { attachRectangle, lShape, outlineFromWalls, rectangle } from '../formulas/outline-shapes.ts';

/** An outline that was read, or why not. */
export type ReadOutline =
  | { readonly kind: 'outline'; readonly outline: Outline }
  | { readonly kind: 'notAnOutline'; readonly problem: string };

type Pair = { readonly first: Metres; readonly second: Metres };

const refuse = (problem: string): ReadOutline => ({ kind: 'notAnOutline', problem });
const SIDE_WORDS = 'front|left|back|right';

function side(word: string | undefined): Side {
  return word === 'front' || word === 'left' || word === 'back' ? word : 'right';
}

/** Unit named anywhere in the text, for the numbers in it that have none. */
function unitIn(text: string, system: UnitSystem): UnitOf<'length'> {
  if (/\d\s*(?:m|metres?|meters?)\b/i.test(text)) return 'm';
  if (/\d\s*(?:ft|feet|foot|')/i.test(text)) return 'ft';
  return system === 'metric' ? 'm' : 'ft';
}

function length(text: string, unit: UnitOf<'length'>): Metres | undefined {
  const read = readLength(text, { unit, unsafeEnd: 'high', mostMetres: 500 });
  return read.kind === 'notALength' || read.metres === 0 ? undefined : read.metres;
}

function pair(text: string, unit: UnitOf<'length'>): Pair | undefined {
  const [first, second, more] = text.split(/\s*(?:x|×|\bby\b)\s*/i);
  if (first === undefined || second === undefined || more !== undefined) return undefined;
  const [one, two] = [length(first, unit), length(second, unit)];
  return one === undefined || two === undefined ? undefined : { first: one, second: two };
}

function readWalls(text: string, unit: UnitOf<'length'>): Polygon | string {
  const steps: WallStep[] = [];
  for (const part of text.split(/[,;]/).filter((piece) => piece.trim() !== '')) {
    const match = new RegExp(`^\\s*(${SIDE_WORDS})\\s+(.+)$`, 'i').exec(part);
    const size = match?.[2] === undefined ? undefined : length(match[2], unit);
    if (match === null || size === undefined) return `the wall "${part.trim()}" could not be read`;
    steps.push({ towards: side(match[1]?.toLowerCase()), length: size });
  }
  const { polygon, gapMetres } = outlineFromWalls(steps);
  const round = steps.reduce((sum, step) => sum + step.length, 0);
  if (gapMetres > 0.01 * round)
    return `the walls do not close: the end is ${gapMetres.toFixed(2)} m from the start`;
  return isSimple(polygon) ? polygon : 'the walls cross one another';
}

function readHouse(text: string, unit: UnitOf<'length'>): Polygon | string {
  if (new RegExp(`^\\s*(${SIDE_WORDS})\\b`, 'i').test(text)) return readWalls(text, unit);
  const [whole, cut] = text.split(/\bless\b/i);
  const size = pair(whole ?? '', unit);
  if (size === undefined) return 'width along the front by depth could not be read';
  if (cut === undefined) return rectangle(size.first, size.second);
  const place = /^(.*?)\bat\s+(?:the\s+)?(front|back)\s+(left|right)\s*$/i.exec(cut);
  const gone = place?.[1] === undefined ? undefined : pair(place[1], unit);
  if (place === null || gone === undefined)
    return 'the part cut out must read like "10 x 12 ft at back right"';
  if (gone.first >= size.first || gone.second >= size.second)
    return 'the part cut out is larger than the house';
  const end = place[2]?.toLowerCase() === 'front' ? 'front' : 'back';
  const hand = place[3]?.toLowerCase() === 'left' ? 'left' : 'right';
  return lShape(size.first, size.second, gone.first, gone.second, { end, hand });
}

function readAttached(text: string, outline: Outline, unit: UnitOf<'length'>): Polygon | string {
  const match = new RegExp(`^(.*?)\\bon\\s+(?:the\\s+)?(${SIDE_WORDS})(?:\\s+at\\s+(.+))?\\s*$`, 'i').exec(
    text,
  );
  const size = match?.[1] === undefined ? undefined : pair(match[1], unit);
  if (match === null || size === undefined) return 'a part attached must read like "12 x 10 ft on back"';
  const along =
    match[3] === undefined ? undefined : readLength(match[3], { unit, unsafeEnd: 'low', mostMetres: 500 });
  if (along?.kind === 'notALength') return `where the part begins ("${match[3]}") could not be read`;
  return attachRectangle(outline, side(match[2]?.toLowerCase()), {
    width: size.first,
    depth: size.second,
    ...(along === undefined ? {} : { along: metres(along.metres) }),
  });
}

/**
 * Reads an outline: `40 x 30 ft` (width along the front by depth), `40 x 30 ft less 10 x 12 at back right`, or walls in
 * walking order (`right 40 ft, back 30 ft, left 40 ft, front 30 ft`); after each `+` something attached, length along
 * the wall by depth (`+ 12 x 10 ft on back`, `+ 8 x 6 on left at 3`). Bare numbers take the unit named elsewhere.
 */
export function parseOutline(text: string, system: UnitSystem): ReadOutline {
  const unit = unitIn(text, system);
  const [house = '', ...attached] = text.replace(/[’′]/g, "'").split('+');
  const main = readHouse(house, unit);
  if (typeof main === 'string') return refuse(main);
  let outline: Outline = [main];
  for (const part of attached) {
    const added = readAttached(part.trim(), [main], unit);
    if (typeof added === 'string') return refuse(added);
    outline = [...outline, added];
  }
  return { kind: 'outline', outline };
}

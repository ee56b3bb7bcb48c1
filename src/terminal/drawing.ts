/** Parts of the drawing of the house; `about` is the house as a whole, where no part stands out. */
export const drawingPlaces = [
  'about',
  'roof',
  'eaves',
  'vents',
  'siding',
  'openings',
  'zone0',
  'trees',
  'fences',
  'outbuildings',
  'zone1',
] as const;
export type DrawingPlace = (typeof drawingPlaces)[number];

export type DrawingSize = 'wide' | 'narrow';

/** A piece of a row of the drawing; `here` is where the walk is. */
export interface DrawingPiece {
  readonly text: string;
  readonly here: boolean;
}

interface Picture {
  readonly art: readonly string[];
  /** For each character of the art, the letter of the part it belongs to. */
  readonly parts: readonly string[];
}

const letters: Readonly<Record<DrawingPlace, string>> = {
  about: '',
  roof: 'R',
  eaves: 'E',
  vents: 'V',
  siding: 'S',
  openings: 'O',
  zone0: 'Z',
  trees: 'T',
  fences: 'F',
  outbuildings: 'B',
  zone1: 'Y',
};

const pictures: Readonly<Record<DrawingSize, Picture>> = {
  wide: {
    art: [
      '      _______||__         /\\      ',
      '     /           \\       /  \\     ',
      '   _/_____________\\_    /____\\ __ ',
      '    |o [] |  | []o|       ||  |  |',
      '    |_____|__|____|=======||==|__|',
      ',.,:::::::::::::::::.,.,.,.,.,.,.,',
    ],
    parts: [
      '......RRRRRRRRRRR.........TT......',
      '.....RRRRRRRRRRRRR.......TTTT.....',
      '...EEEEEEEEEEEEEEEEE....TTTTTT.BB.',
      '....SVSOOSOOOOSOOVS.......TT..BBBB',
      '....SSSSSSOOOOSSSSSFFFFFFFTTFFBBBB',
      'YYYZZZZZZZZZZZZZZZZZYYYYYYYYYYYYYY',
    ],
  },
  narrow: {
    art: [
      '     ____||____      /\\       ',
      '    _|o[]||[]o|_    /__\\   __ ',
      ',.,::|___||___|::====||===|__|',
    ],
    parts: [
      '.....RRRRRRRRRR......TT.......',
      '....ESVOOOOOOVSE....TTTT...BB.',
      'YYYZZSSSSOOSSSSZZFFFFTTFFFBBBB',
    ],
  },
};

/** Columns and rows that a drawing takes. */
export function drawingExtent(size: DrawingSize): { readonly columns: number; readonly rows: number } {
  const { art } = pictures[size];
  return { columns: art[0]?.length ?? 0, rows: art.length };
}

/**
 * The house with the part where the walk is filled with `fill`, so that it can be told without colour. A place
 * that the drawing does not have fills nothing.
 */
export function drawHouse(
  place: string | undefined,
  size: DrawingSize,
  fill: string,
): readonly DrawingPiece[][] {
  const letter = Object.entries(letters).find(([name]) => name === place)?.[1] ?? '';
  const { art, parts } = pictures[size];
  return art.map((row, index) => drawRow(row, parts[index] ?? '', letter, fill));
}

function drawRow(row: string, parts: string, letter: string, fill: string): DrawingPiece[] {
  const pieces: { text: string; here: boolean }[] = [];
  for (const [column, character] of [...row].entries()) {
    const here = letter !== '' && parts[column] === letter;
    const text = here ? fill : character;
    const last = pieces.at(-1);
    if (last?.here === here) last.text += text;
    else pieces.push({ text, here });
  }
  return pieces;
}

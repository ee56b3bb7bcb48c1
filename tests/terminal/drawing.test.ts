import { describe, expect, it } from 'vitest';
import { type DrawingSize, drawHouse, drawingExtent, drawingPlaces } from '../../src/terminal/drawing.ts';

const sizes: readonly DrawingSize[] = ['wide', 'narrow'];

function picture(place: string | undefined, size: DrawingSize): string {
  return drawHouse(place, size, '#')
    .map((row) => row.map((piece) => piece.text).join(''))
    .join('\n');
}

describe.each(sizes)('the %s drawing of the house', (size) => {
  it('has rows of one width, in plain ASCII', () => {
    const rows = picture('about', size).split('\n');
    expect(rows).toHaveLength(drawingExtent(size).rows);
    for (const row of rows) {
      expect(row).toHaveLength(drawingExtent(size).columns);
      expect(row).toMatch(/^[ -~]+$/u);
    }
  });

  it('shows by its characters alone where the walk is, differently for every stop', () => {
    const pictures = drawingPlaces.map((place) => picture(place, size));
    expect(new Set(pictures).size).toBe(drawingPlaces.length);
  });

  it('fills only what belongs to the place, and something of each', () => {
    for (const place of drawingPlaces.filter((one) => one !== 'about')) {
      const here = drawHouse(place, size, '#').flatMap((row) => row.filter((piece) => piece.here));
      expect(here.length, place).toBeGreaterThan(0);
      expect(here.map((piece) => piece.text).join('')).toMatch(/^#+$/u);
    }
  });

  it('is the house as it is for a place that is not drawn', () => {
    expect(picture('chimney', size)).toBe(picture(undefined, size));
    expect(picture('about', size)).toBe(picture(undefined, size));
  });
});

describe('the narrow drawing', () => {
  it('fits a screen of 40 columns', () => {
    expect(drawingExtent('narrow').columns).toBeLessThan(40);
  });
});

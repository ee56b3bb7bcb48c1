import { describe, expect, it } from 'vitest';
import { findComputation, NOTES, parseInput } from '../../../src/computations/work-out/index.ts';
import { feet } from '../../../src/quantities/index.ts';
import { result, value, workOut } from './work-out-texts.ts';

describe('zones', () => {
  it('tells what lies beyond each lot line, and notes how corners count', () => {
    const found = result('zone-areas', { outline: '40 x 30 ft', 'lot-left': '10 ft', 'lot-back': '20 ft' });
    expect(value(found, 'near-beyond', 'sqm')).toBeCloseTo(0, 9);
    const total = value(found, 'middle-beyond', 'sqm');
    const [left, back] = [
      value(found, 'middle-beyond-left', 'sqm'),
      value(found, 'middle-beyond-back', 'sqm'),
    ];
    expect(total).toBeGreaterThan(Math.max(left, back));
    expect(total).toBeLessThan(left + back);
    expect(found.notes).toContain('corner-on-both-sides');
  });

  it('shows how far the bands of two close houses overlap', () => {
    const near = result('zone-overlap', {
      outline: '40 x 30 ft',
      side: 'left',
      gap: '8 ft',
      theirWidth: '30 ft',
      theirDepth: '40 ft',
    });
    // Two straight walls 30 ft long, 8 ft apart, 5 ft bands: a strip 2 ft wide, and a little round the ends.
    expect(value(near, 'near', 'sqft')).toBeGreaterThan(60);
    expect(value(near, 'near', 'sqft')).toBeLessThan(75);
    const far = result('zone-overlap', {
      outline: '40 x 30 ft',
      side: 'left',
      gap: '20 ft',
      theirWidth: '30 ft',
      theirDepth: '40 ft',
    });
    expect(value(far, 'near', 'sqft')).toBeCloseTo(0, 9);
  });

  it('refuses edges that do not grow', () => {
    expect(workOut('zone-areas', { outline: '40 x 30 ft', near: '30 ft', middle: '5 ft' })).toMatchObject({
      kind: 'outside',
    });
  });
});

describe('parseInput', () => {
  it.each([
    ['40 x 30 ft', 1200],
    ['40 by 30', 1200],
    ["40' x 30'", 1200],
    ['40 x 30 less 10 x 12 at back right', 1080],
    ['40 x 30 ft less 10 x 12 at the front left', 1080],
    ['right 40 ft, back 30 ft, left 40 ft, front 30 ft', 1200],
    ['right 40, back 18, left 10, back 12, left 30, front 30', 1080],
    ['40 x 30 ft + 12 x 10 on back', 1320],
    ['40 x 30 ft + 12 x 10 ft on the left at 5 ft + 6 x 4 on front', 1344],
  ])('reads the outline %s', (outline, squareFeetOfHouse) => {
    expect(value(result('zone-areas', { outline }), 'footprint', 'sqft')).toBeCloseTo(squareFeetOfHouse, 6);
  });

  it.each([
    ['round', 'could not be read'],
    ['40 x 30 x 20', 'could not be read'],
    ['right 40, back 30', 'do not close'],
    ['right 40, up 30', 'could not be read'],
    ['40 x 30 less 50 x 5 at back right', 'larger than the house'],
    ['40 x 30 less 10 x 12', 'at back right'],
    ['40 x 30 + deck', 'on back'],
    ['0 x 30', 'could not be read'],
  ])('refuses the outline %s', (outline, problem) => {
    expect(workOut('zone-areas', { outline })).toMatchObject({
      kind: 'badInput',
      field: 'outline',
      problem: expect.stringContaining(problem),
    });
  });

  it('says which unit a bare number was given, and reads a fraction as a percentage too', () => {
    const depth = findComputation('gravel')?.inputs.find(({ id }) => id === 'depth');
    const waste = findComputation('gravel')?.inputs.find(({ id }) => id === 'waste');
    if (depth === undefined || waste === undefined) throw new Error('no such input');
    expect(parseInput(depth, '3')).toMatchObject({ kind: 'value', value: feet(0.25), assumedUnit: 'in' });
    expect(parseInput(depth, '80', { system: 'metric' })).toMatchObject({ value: 0.08, assumedUnit: 'mm' });
    expect(parseInput(waste, '15 %')).toMatchObject({ value: 0.15 });
    expect(parseInput(waste, '0.15')).toMatchObject({ value: 0.15 });
  });

  it('takes a range at its unsafe end', () => {
    const distance = findComputation('heat-from-thing')?.inputs.find(({ id }) => id === 'distance');
    if (distance === undefined) throw new Error('no such input');
    expect(parseInput(distance, '5-10 ft')).toMatchObject({ value: feet(5) });
  });

  it('has a sentence for every note a result can carry', () => {
    const found = result('crown-gap', { slope: '40 %' });
    expect(found.notes).toContain('boundary-steeper');
    for (const note of found.notes) expect(NOTES[note]).toMatch(/\.$/);
  });
});

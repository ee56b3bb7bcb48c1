import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { assessDone } from '../../src/planning/done.ts';
import { seasonOf, upkeepFor, yearOfUpkeep } from '../../src/planning/upkeep.ts';
import { checklist, demoHouses, sheetOf } from './houses.ts';

describe('the seasons', () => {
  // Meteorological seasons, as weather services define them (NOAA: spring is March to May in the north, September to November in the south).
  it.each([
    [1, 'winter', 'summer'],
    [3, 'spring', 'autumn'],
    [5, 'spring', 'autumn'],
    [6, 'summer', 'winter'],
    [8, 'summer', 'winter'],
    [9, 'autumn', 'spring'],
    [11, 'autumn', 'spring'],
    [12, 'winter', 'summer'],
  ] as const)('month %i is %s in the north and %s in the south', (month, north, south) => {
    expect(seasonOf(month, 'north')).toBe(north);
    expect(seasonOf(month, 'south')).toBe(south);
  });
});

describe('the upkeep through the year', () => {
  it.each(demoHouses)('begins with the season of the day and holds all work of the house: %s', (name) => {
    const assessment = assess(checklist, sheetOf(`houses/${name}`));
    const { seasons, hemisphere } = yearOfUpkeep(checklist, assessment, 7);
    expect(hemisphere).toBe('north');
    expect(seasons.map((one) => one.season)).toEqual(['summer', 'autumn', 'winter', 'spring']);
    expect(seasons.flatMap((one) => one.months).sort((a, b) => a - b)).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
    ]);
    const work = new Set(seasons.flatMap((one) => one.work.map(({ id }) => id)));
    expect([...work].sort()).toEqual(
      upkeepFor(checklist, assessment)
        .map(({ id }) => id)
        .sort(),
    );
  });

  it('turns the year round in the southern half of the world', () => {
    const sheet = {
      ...sheetOf('houses/larkspur-way-41'),
      'about.place': { status: 'given', value: 'australia' },
    } as const;
    const { seasons, hemisphere } = yearOfUpkeep(checklist, assess(checklist, sheet), 1);
    expect(hemisphere).toBe('south');
    expect(seasons[0]).toMatchObject({ season: 'summer', months: [12, 1, 2] });
  });

  it('has work that comes back done again each year', () => {
    const sheet = sheetOf('houses/fernhollow-lane-12');
    const { done, ...assessment } = assessDone(checklist, sheet, [
      'clean-gutters@front',
      'take-out-mulch@front',
    ]);
    expect(yearOfUpkeep(checklist, assessment, 4, done).again.map((one) => one.id)).toEqual([
      'clean-gutters@front',
    ]);
  });
});
